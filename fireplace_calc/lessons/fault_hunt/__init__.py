"""Looking for a planted fault: what each book asks, a list to look down, and guesses."""
