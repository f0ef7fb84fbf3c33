"""Units, tables, inputs and places: what everything else stands on."""
