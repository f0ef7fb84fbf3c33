"""Panels for a class: a live lesson and the exercises."""
