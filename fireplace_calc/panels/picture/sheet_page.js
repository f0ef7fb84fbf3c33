// A page of sheets and nothing else.

function render({ model, el }) {
  const sheets = followSheets(model);
  el.append(sheets.node);
  return () => sheets.close();
}

export default { render };
