"""A laid fireplace cut into pieces for somebody who casts his own: the text of a set's file."""
