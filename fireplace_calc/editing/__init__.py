"""Changes in, a checked record out; the same as text in a file."""
