"""How an exercise is drawn up: round figures, limits of the code, steps, a drawing."""
