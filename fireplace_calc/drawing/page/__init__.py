"""A drawing for a web page: lines and letters of a Figure instead of dots."""
