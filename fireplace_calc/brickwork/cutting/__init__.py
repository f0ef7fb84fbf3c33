"""Cuts as a mason makes them: a mark for every shape, which whole unit each comes out of, bevels,
the arch.
"""
