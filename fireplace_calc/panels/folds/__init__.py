"""What can be unfolded under the picture."""
