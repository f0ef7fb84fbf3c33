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
.fireplace-lesson .beside { flex-flow: row wrap; gap: 0 1.2em; align-items: flex-start; }
.fireplace-lesson .beside > * { flex: 1 1 28em; min-width: 0; }
.fireplace-lesson .why li { line-height: 1.35; }
.fireplace-lesson .why ul { margin: .2em 0 .4em; padding-left: 1.4em; }
</style>"""
