"""What stands of a set of pieces: what was measured, what is left to do, the record of it."""
