"""Heat through solids and across the gaps between them."""
