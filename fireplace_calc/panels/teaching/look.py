"""How lessons and exercises look on the page, over what every panel looks like."""

STYLE = """<style>
.fireplace-lesson .why p { margin: .25em 0 .5em; line-height: 1.5; max-width: 62em; }
.fireplace-lesson .widget-dropdown, .fireplace-lesson .widget-text,
.fireplace-lesson .widget-inline-hbox { max-width: 100%; }
.fireplace-lesson :is(h2, h3) { margin: .2em 0; font-size: 1.17em; }
.fireplace-lesson .reply { border-left: 4px solid currentColor; padding: .25em .7em;
  margin: .1em 0 .5em; line-height: 1.4; }
.fireplace-lesson .reply.right { font-weight: 600; }
.fireplace-lesson { --jp-widgets-inline-height: 44px; }
.fireplace-lesson .jupyter-widget-Collapse-header { min-height: 44px; }
.fireplace-lesson .widget-checkbox label { min-height: 44px; display: flex; align-items: center; }
.fireplace-lesson .beside { flex-flow: row wrap; gap: 0 1.2em; align-items: flex-start; }
.fireplace-lesson .given { border-collapse: collapse; margin: .2em 0; }
.fireplace-lesson .given :is(td, th) { border: 1px solid currentColor; padding: .15em .5em;
  text-align: left; font-weight: 400; line-height: 1.3; }
.fireplace-lesson .given td { font-weight: 700; }
.fireplace-lesson .widget-toggle-buttons { flex-flow: row; }
.fireplace-lesson .widget-toggle-buttons button { height: 44px; min-width: 44px; margin: 0 2px; }
.fireplace-lesson .figures { line-height: 1.3; }
.fireplace-lesson .figures ul { margin: 0 0 .2em; padding-left: 1.4em; }
.fireplace-lesson .figures li { line-height: 1.3; }
.fireplace-lesson .asks { line-height: 1.4; }
.fireplace-lesson .beside > * { flex: 1 1 28em; min-width: 0; }
.fireplace-lesson .why li { line-height: 1.35; }
.fireplace-lesson .why ul { margin: .2em 0 .4em; padding-left: 1.4em; }
</style>"""
