"""The lit scene on the page: what is sent to it, and what it asks."""
