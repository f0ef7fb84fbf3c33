"""The order on paper: a block to each supplier, how it was counted, what it comes to."""
