"""A fireplace that stands on paper: where to hold the tape, lines to write on, what was found."""
