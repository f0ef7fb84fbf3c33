"""How the faces of every stuff are laid: the same bricks, stones and sections as are drawn and
counted.
"""
