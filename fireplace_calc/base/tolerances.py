"""How close counts as equal: every tolerance of the package that more than one place might want, by
its own name.
"""

LIMIT_SLACK = 1e-7
"""Relative: what floats may lose before a figure misses a limit; nothing a tape could find. [-]"""
ROUNDING = 1e-9
"""Relative, or in meters on lengths of a few meters: what adding up floats may lose. [-]"""
COUNT_SLACK = 1e-6
"""Taken off before a count is rounded up to whole batches, and added to a temperature's limit. [-]
"""
CONTACT_GAP = 1e-6
"""Solids nearer than this touch. [m]"""
MESH_SLIVER = 1e-5
"""A triangle lower than this over its longest side is no surface; no edge is shorter. [m]"""
