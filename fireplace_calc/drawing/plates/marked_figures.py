"""Every figure of the set by its key: its mark in the ring, and its title.

Sections and plans have letters, other figures numbers; no two share a mark, so that a mark is found
by the cover's list wherever it stands.
"""

from __future__ import annotations

MARKED: dict[str, tuple[str, str]] = {
    "front": ("1", "Front elevation"),
    "section": ("A", "Section"),
    "hearth_plan": ("B", "Plan at hearth"),
    "flue_plan": ("C", "Plan at flue"),
    "base_plan": ("D", "Footing and base"),
    "throat_plan": ("E", "Plan at throat"),
    "roof_plan": ("F", "Plan at roof"),
    "chimney_plan": ("G", "Plan of the chimney"),
    "roof": ("2", "Against the roof"),
    "lintel_detail": ("3", "Lintel and throat"),
    "chamber_detail": ("4", "Smoke chamber"),
    "crown_detail": ("5", "Crown"),
    "hearth_detail": ("6", "Hearth extension"),
    "framing_detail": ("7", "Clearance at framing"),
    "flashing_detail": ("8", "Flashing at the roof"),
    "mantel_detail": ("9", "Mantel and trim"),
    "rod": ("10", "Storey rod"),
    "flue_rod": ("11", "Rod of the flue"),
    "block_layout": ("12", "Base block"),
    "block_front": ("13", "Block under the extension"),
    "layout": ("14", "Firebrick floor"),
    "layout_back": ("15", "Back"),
    "layout_raked": ("16", "Raked back, along its slope"),
    "layout_side": ("17", "Side, front left"),
    "arch": ("18", "Arch"),
    "templates": ("19", "Bevel"),
}
"""Key to mark and title."""


def marked(key: str) -> tuple[str, str]:
    """Mark and title of a figure.

    >>> marked("section")
    ('A', 'Section')
    """
    return MARKED[key]
