"""Setting a set of pieces: in what order, with how much mortar, from where, and by whom."""
