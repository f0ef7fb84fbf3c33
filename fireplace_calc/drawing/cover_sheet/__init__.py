"""The cover of the set."""
