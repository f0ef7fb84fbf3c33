"""Cut list and marked layout, templates at full size, the arch set out."""
