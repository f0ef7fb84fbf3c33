"""A fault to find by oneself, and what pages with questions share."""
