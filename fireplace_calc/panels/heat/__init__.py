"""The heat as a fold of the workbench."""
