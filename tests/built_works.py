"""Works of several kinds that files are written of: changes to a plain design."""

WORKS = {
    "as it comes": {},
    "modular, arched, raised": {
        "method": "modular",
        "firebox.lining": "refractory section",
        "opening.head": "segmental",
        "opening.rise": "5 in",
        "base.hearth_level": "12 in",
    },
    "wide, round, aside": {
        "opening.width": "72 in",
        "flue.shape": "round",
        "flue.size": "18",
        "flue.offset": "12 in",
        "base.core": "hollow",
    },
    "no hearth in front, thick": {
        "hearth.front": "0 in",
        "firebox.lining_thickness": "2-1/2 in",
        "firebox.rake": "0 in",
        "firebox.masonry": "hollow grouted solid",
    },
}
