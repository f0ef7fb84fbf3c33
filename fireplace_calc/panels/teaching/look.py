"""How lessons and exercises look on the page, over what every panel looks like."""

STYLE = """<style>
.fireplace-lesson .why p { margin: .25em 0 .5em; line-height: 1.5; max-width: 62em; }
.fireplace-lesson .widget-dropdown, .fireplace-lesson .widget-text,
.fireplace-lesson .widget-inline-hbox { max-width: 100%; }
.fireplace-lesson :is(h2, h3) { margin: .2em 0; font-size: 1.17em; }
.fireplace-lesson .reply { border-left: 4px solid currentColor; padding: .25em .7em;
  margin: .1em 0 .5em; line-height: 1.4; }
.fireplace-lesson .reply.right { font-weight: 600; }
.fireplace-lesson .asked > .widget-label { text-align: left;
  justify-content: flex-start !important; }
</style>"""
