"""Every exercise worked from nothing but the figures as they are printed, with the figures of the
books typed in anew: no function of the package is called.

IRC 2021, chapter 10 (R1001.7, R1001.8.1, R1001.10, R1001.11 exception 4, R1003.9, R1003.15.1) in
inches, and in millimetres as it prints them; Canada 9.21.4.4, 9.22.5.1, 9.22.7.1, 9.22.9.1 and the
round-flue table; England's Approved Document J, table 2, diagrams 17 and 24. NIOSH 94-110: 51 lb,
10 in over the reach; a team of two lifts two thirds of the sum, of three half (HSE guidance).
"""

import csv
import re
from fractions import Fraction
from math import ceil, pi, sqrt, tan
from pathlib import Path

IN, FT, LB = 0.0254, 0.3048, 0.45359237
TABLE = Path(__file__).parents[2] / "data" / "canada_round_flues.csv"


def mixed(text):
    return float(sum(Fraction(part) for part in text.split()))


def number(text):
    """A printed figure in SI: length, area, mass, temperature, pressure."""
    text = text.replace("\u202f", " ").replace(",", "")
    if made := re.fullmatch(r"""(?:(\d+)'-)?(?:([\d /]+)")""", text):
        return (int(made[1] or 0) * 12 + mixed(made[2])) * IN
    made = re.fullmatch(r"(-?[\d .]+?) (mm|m|in²|cm²|m²|lb|kg|°F|°C|Pa)", text)
    value, unit = float(made[1].replace(" ", "")), made[2]
    if unit in ("°F", "°C"):
        return (value - 32) / 1.8 + 273.15 if unit == "°F" else value + 273.15
    return value * {"mm": 1e-3, "m": 1, "in²": IN**2, "cm²": 1e-4, "m²": 1, "lb": LB, "kg": 1,
                    "Pa": 1}[unit]  # fmt: skip


class Sheet:
    """What a student has: names and printed figures."""

    def __init__(self, task):
        self.words = {g.name: g.shown(task.units) for g in task.given}
        self.book = (
            "US" if task.pack.startswith("US") else "CA" if task.pack.startswith("Can") else "UK"
        )
        self.feet, self.level, self.branch = task.units == "feet-inches", task.level, task.branch
        self.story = task.story

    def word(self, start):
        return next((text for name, text in self.words.items() if name.startswith(start)), None)

    def __call__(self, start):
        text = self.word(start)
        return None if text is None else number(text)

    def us(self, inches, millimetres):
        """A figure of the American code in the reader's units."""
        return inches * IN if self.feet else millimetres / 1000


def flue(s):
    width, high, area = s("Opening width"), s("Opening height"), s("Area")
    if width:
        area = width * high
    made = {"area": area}
    if s.book == "US":
        made["least"] = area / (12 if "round" in s.story else 10)
        nets = {n.split()[1].rstrip(","): number(t) for n, t in s.words.items() if "Liner" in n}
        made["liner"] = next((n for n, net in nets.items() if net >= made["least"]), None)
    elif s.book == "CA":
        tall = s("Chimney height")
        for row in csv.DictReader(TABLE.open()):
            if area <= float(row["opening_max_m2"]) and float(row["height_min_m"]) < tall <= float(
                row["height_max_m"]
            ):
                made |= {
                    "across": float(row["flue_min_mm"]) / 1e3,
                    "most": float(row["flue_max_mm"]) / 1e3,
                }
                break
    elif width and width <= 0.5 and high <= 0.55:
        made |= {"row": "up to 500 by 550 mm", "across": 0.2, "net": pi * 0.01}
    else:
        made |= {"row": "larger than 500 by 550 mm", "least": 0.15 * area,
                 "across": sqrt(0.15 * area * 4 / pi)}  # fmt: skip
    return made


def roof(s):
    pitch, ridge = s.word("Roof pitch"), s("Level to the ridge")
    slope = float(pitch.split("tangent")[1]) if "tangent" in pitch else float(pitch.split()[0]) / 12
    reach = {"US": s.us(120, 3048), "CA": 3.0, "UK": 2.3}[s.book]
    over = {"US": s.us(36, 914), "CA": 0.9, "UK": 1.0}[s.book]
    above = {"US": s.us(24, 610), "CA": 0.6, "UK": 0.6}[s.book]
    climb = s("Climb") if s.level == 1 else slope * min(ridge, reach)
    if s.book != "UK":
        need = max(over, climb + above)
    elif ridge <= 0.6:
        need = climb + above
    else:
        rise = s("Rise of the roof") or slope * ridge
        need = max(climb, min(over, rise))
    made = {"climb": climb, "need": need}
    if s.level == 3:
        made["top"] = s("Roof at the uphill") + need
        made["count"] = ceil((made["top"] - s("Top as it stands")) / s("One flue section") - 1e-6)
    return made


def mantel(s):
    out, near = s("Projection"), s.us(6, 152) if s.book == "US" else 0.15
    made = {"near": near}
    if s.book == "US":
        made["away"] = 8 * out if out <= 1.5 * IN + 1e-9 else s.us(12, 305)
        made["most"] = (s("Molding") or 0) / 8
    else:
        made["away"] = 0.3 if out > 0.038 else 0.15
    made["level"] = (s("Top of the opening") or 0) + made["away"]
    return made


def hearth(s):
    width, high = s("Opening width"), s("Opening height")
    area = width * high if high else s("Area")
    made = {"area": area}
    if s.book == "US":
        large = area >= 6 * FT**2
        front, side = (s.us(20, 508), s.us(12, 305)) if large else (s.us(16, 406), s.us(8, 203))
    elif s.book == "CA":
        raised = s("Firebox floor, above the hearth")
        if s.level == 3:
            raised = s("Firebox floor, above the floor") - s("Hearth in front")
        made["raise"] = raised
        steps = max(0, ceil((raised - 0.3) / 0.05 - 1e-9))
        front, side = (0.4 if raised <= 0.15 + 1e-9 else 0.45 + 0.025 * steps), 0.2
    else:
        front, side = 0.5, 0.15
    return made | {"front": front, "side": side, "whole": width + 2 * side}


def lintel(s):
    span, cover, beam = s("Span"), s("Wall over"), s("Load of the beam")
    bears = "A beam bears" in s.story
    high = cover if bears else span / 2
    made = {"height": high}
    if s.level > 1:
        told = s.word("Weight of the wall").split()
        by_face = float(told[0]) * (LB / FT**2 if s.feet else 1.0)
        made["weight"] = by_face * span * high / (1 if bears else 2)
        made["carried"] = made["weight"] + (beam or 0)
        made["end"] = (made["carried"] if bears else made["weight"]) / 2
        made["long"] = span + 2 * s.us(4, 102)
    return made


def throat(s):
    deep, area = s("Throat, front"), s("Free area of the throat")
    first, last = s("Width at the front"), s("Width at the back")
    made = {}
    if s.level == 3:
        width, back, depth, start = (
            s(n) for n in ("Opening width", "Back width", "Firebox depth", "Front of the throat")
        )
        first = width + (back - width) * start / depth
        last = width + (back - width) * (start + deep) / depth
        made |= {"first": first, "last": last}
    area = area or deep * (first + last) / 2
    made |= {"area": area, "vent": area / 2}
    if s.book == "US":
        made["spare"] = area - s("Net area of the flue")
    elif s.level == 3:
        made["spare"] = s("Free area of the air vent") - area / 2
    return made


def chamber(s):
    run = s("Each side") or (s("Width at the throat") - s("Flue,")) / 2
    rise = run / tan(pi / 6) if "corbelled" in s.story else run
    whole = rise + (s("Upright") or 0)
    return {"run": run, "rise": rise, "whole": whole, "tallest": s("Opening width")}


def draft(s):
    height = s("Height of") or s("Top of the flue") - s("Top of the opening")
    heavy = [
        float(t.split()[0]) for n, t in s.words.items() if n.startswith(("Outdoor", "Flue gas"))
    ]
    less = heavy[0] - heavy[1] if heavy else float(s.word("Difference").split()[0])

    def pull(tall):
        return tall / FT * less * 47.88 if s.feet else tall * less * 9.80665

    return {"height": height, "pull": pull(height), "more": pull(s("One flue section") or 0)}


def wood(s):
    hot, cold = s("Inner face"), s("Room")

    def resist(start):
        return float(re.search(r"[\d.]+", s.word(start))[0])

    if s.level == 1:
        return {"first": hot - (hot - cold) * resist("Firebrick") / resist("All layers")}
    chain = [resist(n) for n in ("Firebrick", "Brick behind", "Closed", "Studs")]
    whole = sum(chain)
    names = ("lining", "brick", "air gap", "studs and board")
    made = {
        "most": names[chain.index(max(chain))],
        "first": hot - (hot - cold) * chain[0] / whole,
        "back": cold + (hot - cold) * (chain[2] + chain[3]) / whole,
    }
    if s.level == 3:
        more = float(re.search(r"[\d.]+", next(t for n, t in s.words.items() if "more" in n))[0])
        table = {int(n.split()[1]): number(t) for n, t in s.words.items() if n.endswith("fire out")}
        made["studs"] = cold + (hot - cold) * chain[3] / (whole + more)
        made["hours"] = max(table, key=table.get)
    return made


def setting(s):
    lifts = [number(t) for n, t in s.words.items() if re.match(r"Lift \d", n)]
    wanted = s("Top of the last")
    whole = sum(lifts) if lifts else s("All lifts")
    count = len(lifts) or int(s.word("Lifts, and"))
    bed = (wanted - whole) / count
    made = {"whole": whole, "bed": bed}
    if s.level > 1:
        thin, thick = s("Thinnest"), s("Thickest")
        wide = bed > thick + 1e-9
        made["allowed"] = (
            "no, too thick" if wide else "no, too thin" if bed < thin - 1e-9 else "yes"
        )
        made["second"] = lifts[0] + lifts[1] + 2 * bed
        made["miss"] = abs(wanted - whole - count * (thick if wide else thin))
    return made


def lifting(s):
    one, weight = s("One person may lift"), s("Weight of the piece")
    if s.level > 1:
        dense = next(t for n, t in s.words.items() if n.startswith("Weight of") and "/" in t)
        by = float(dense.split()[0].replace(",", "")) * (LB / FT**3 if s.feet else 1.0)
        weight = s("Length") * s("Width") * s("Height") * by
    if s.level == 3:
        one = 51 * LB * 10 * IN / s("Reach")
    teams = (("one person", one), ("two people", one * 4 / 3), ("three people", one * 1.5))
    who = next((name for name, most in teams if weight <= most), "hoist")
    return {"weight": weight, "one": one, "who": who}


WORKED = {f.__name__: f for f in (flue, roof, mantel, hearth, lintel, throat, chamber, draft, wood,
                                  setting, lifting)}  # fmt: skip


def answers(task):
    """Step by step, what a pencil gives."""
    assert task.kind in WORKED, f"work {task.kind} a second time in tests/naive/drill.py"
    made = WORKED[task.kind](Sheet(task))
    return [made[step.key] for step in task.steps]
