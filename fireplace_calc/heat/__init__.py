"""How heat goes through the masonry to whatever burns beside it: judgement, never a clearance."""
