"""What a set of pieces is, how its file reads, and the arithmetic of its joints."""
