"""Options side by side: their pictures, and one wiped over another."""
