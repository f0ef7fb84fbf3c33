"""How the drawing of an exercise is set out: its size, its strings, lines from names to things."""
