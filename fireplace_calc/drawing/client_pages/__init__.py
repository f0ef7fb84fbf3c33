"""Two pages in color to hand over to a client: pictures, names, a few sentences."""
