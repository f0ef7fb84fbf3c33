"""The fireplace in its room, in one-point perspective."""
