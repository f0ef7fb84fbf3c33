"""Numbers to work out, drawn from a seed."""
