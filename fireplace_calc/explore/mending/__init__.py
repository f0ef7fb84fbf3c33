"""What is the least change that mends a design: levers, their settings, and what each would do."""
