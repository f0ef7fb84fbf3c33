"""One's own jobs: the page that asks which, the questions of a new one, and what was done."""
