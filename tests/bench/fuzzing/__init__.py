"""Random designs, files, papers and kills for ``tests/bench/fuzz.py``: what to try, and what must
hold afterwards.
"""
