"""Fireplace and flue cut into cells, and fires burnt in them."""
