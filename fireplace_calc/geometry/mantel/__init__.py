"""The mantel as it is built: pieces of trim and families of mantels, their solids, and the steps of
them that a code asks about.
"""
