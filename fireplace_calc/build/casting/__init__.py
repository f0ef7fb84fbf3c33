"""What somebody who casts his own pieces builds, mixes and buys."""
