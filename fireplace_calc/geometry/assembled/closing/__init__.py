"""Does every lift, and every bed, close round the smoke: what leaks, what is shut, how wide."""
