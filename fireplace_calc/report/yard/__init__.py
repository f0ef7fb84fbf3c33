"""The order as it goes out: to whom, in what turn, what it takes besides, and what it comes to."""
