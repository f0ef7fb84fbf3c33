"""Two or three changes together, where one does not do it."""
