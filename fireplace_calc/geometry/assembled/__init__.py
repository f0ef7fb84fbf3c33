"""A set of pieces set up: solids, contacts, fit, the smoke's way, and what the design reads off."""
