"""Levels, dimension strings and words of the live views."""
