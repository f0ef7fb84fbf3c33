"""What the pieces of a set are for, what they are cast of, and which parts they make."""

ROLES = (
    "base plate",
    "wall",
    "back",
    "extension wall",
    "extension back",
    "top wall",
    "top back",
    "lintel",
    "throat back",
    "throat front",
    "smoke shelf",
    "reducer",
    "collar",
    "flue",
)
"""What a piece is for, from the base up."""
MATERIALS = (
    "refractory concrete",
    "reinforced refractory concrete",
    "clay",
    "lightweight concrete",
)
"""What a piece is cast of."""
FIREBOX = frozenset(ROLES[1:7])
"""Roles that stand round the fire."""
HEAD = frozenset(("throat back", "throat front", "smoke shelf", "reducer"))
"""Roles between the firebox and the flue."""
PARTS = {
    "base plates": ("base plate",),
    "firebox walls": tuple(sorted(FIREBOX)),
    "lintel": ("lintel",),
    "throat back": ("throat back",),
    "smoke shelf": ("smoke shelf",),
    "throat front": ("throat front",),
    "smoke chamber walls": ("reducer", "collar"),
    "flue casing": ("flue",),
}
"""Parts of a fireplace from a set, and the roles of their pieces."""
HEADS = ("straight", "segmental")
