"""What of a set is seen from one side, exactly: faces of pieces, less what stands before them."""
