"""Details at large scales: what is too small to be read on section and plan."""
