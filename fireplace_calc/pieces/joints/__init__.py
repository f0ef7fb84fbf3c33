"""The arithmetic of joints: which beds bring the tops to the levels that are wanted, what an error
grows to, and what is left once part of it stands. Numbers alone; no shape of a piece.
"""
