"""What is mixed on the site, and what is set in as the work rises."""
