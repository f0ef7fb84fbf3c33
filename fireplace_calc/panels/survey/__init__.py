"""The fold on which a fireplace that stands is measured."""
