"""The lesson page: six screens round one picture, and the contents of the course."""
