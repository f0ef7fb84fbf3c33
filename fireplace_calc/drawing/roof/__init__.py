"""The whole height against the roof."""
