"""The room and its furniture: what only stands there, so that a fireplace can be judged."""
