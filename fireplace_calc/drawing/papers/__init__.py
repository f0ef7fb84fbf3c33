"""Papers to print: the paper set, one-page papers, a class on paper."""
