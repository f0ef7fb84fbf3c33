"""The heat in words."""
