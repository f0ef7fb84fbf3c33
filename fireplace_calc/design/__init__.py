"""The record of everything somebody chooses, each input declared once."""
