"""Storey rods: battens marked with every course and every level that matters."""
