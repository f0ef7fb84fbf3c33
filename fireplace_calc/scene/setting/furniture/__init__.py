"""What stands in the room, each at nought, of our own drawing."""
