"""Front, section and plans on one sheet: what a fireplace is set out from."""
