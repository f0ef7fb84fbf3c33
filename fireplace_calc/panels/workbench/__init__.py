"""The live panel as one page: bar, tabs, controls, stage and strip."""
