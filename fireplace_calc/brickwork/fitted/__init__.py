"""Firebrick fitted to a face: its gauge, its cuts, its closers; nothing thinner than can be cut."""
