// A field that stands alone: what is typed goes into the model's value.

function render({ model, el }) {
  const told = () => ({
    key: '', kind: model.get('kind'), label: model.get('description'), help: model.get('tooltip'),
    text: String(model.get('value')), allowed: model.get('kind') === 'choice' ? '' : model.get('placeholder'),
    locked: model.get('disabled') ? model.get('tooltip') : '', note: model.get('note'), wrong: model.get('wrong'),
    options: model.get('options').map((word) => [word, word]),
    suggestions: model.get('kind') === 'text' && model.get('options').length ? model.get('options') : null,
  });
  const field = new Field(told(), ({ value }) => {
    model.set('value', value);
    model.save_changes();
  });
  el.classList.add('fp-alone');
  el.append(field.node);
  const follow = () => field.show(told());
  const names = ['value', 'options', 'disabled', 'tooltip', 'note', 'wrong', 'placeholder'];
  for (const name of names) model.on(`change:${name}`, follow);
  return () => { for (const name of names) model.off(`change:${name}`, follow); };
}

export default { render };
