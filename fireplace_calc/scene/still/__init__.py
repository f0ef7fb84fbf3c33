"""A still of the room without a page: dots worked out from the same things, stuffs and layouts."""
