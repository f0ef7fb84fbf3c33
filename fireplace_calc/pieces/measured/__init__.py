"""A set of one's own, as it is measured piece by piece: forms, what was typed, the set it makes."""
