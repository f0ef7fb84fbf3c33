"""What an exercise is, how an answer is read as people write it, and the reply to it."""
