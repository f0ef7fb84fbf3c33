"""Views of a drawing file, at true size, and the pen that puts them into it."""
