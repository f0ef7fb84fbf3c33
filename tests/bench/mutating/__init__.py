"""Planted faults for ``tests/bench/mutants.py``: where they can stand, and which tests should find
them.
"""
