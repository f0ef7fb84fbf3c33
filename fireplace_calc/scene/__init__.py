"""The fireplace in its room, to be lit and walked round: things made of triangles, how each face is
laid, and from where one looks. It has no dimensions; the drawings have no light.
"""
