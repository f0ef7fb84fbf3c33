"""What a yard is asked: who sells what, and the reader's own price list."""
