"""Entering what stands on a pallet, by keyboard alone."""
