"""Lessons as data files: read, checked, and worked out for a place of the controls."""
