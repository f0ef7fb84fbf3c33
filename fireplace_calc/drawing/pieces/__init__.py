"""Pictures of a set of pieces: cards, pallet, story pole, staging, and the set as it grows."""
