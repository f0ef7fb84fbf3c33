"""What is built, as things that stand by themselves: parts, sections set by hand, pieces of a
set.
"""
