"""One's own jobs: each a folder of text files, with its history and its options."""
