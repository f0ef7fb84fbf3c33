"""The usual slips of an exercise, each worked by what its sentence says was done, from the figures
as they are printed and the books' figures typed in anew (sources in ``drill``): no function of the
package is called.

A slip is named by its step and by how its sentence begins. Several figures stand where a sentence
fits several; nothing where the sheet of that level does not print what the slip takes.
"""

import csv
import re
from math import hypot, pi, radians, sin, sqrt, tan

from naive.drill import FT, IN, LB, TABLE, WORKED, Sheet, number


def flue(s, made):
    width, high, area = s("Opening width"), s("Opening height"), made["area"]
    across, least = made.get("across"), made.get("least")
    share, other = (12, 10) if "round" in s.story else (10, 12)
    slips = {
        "area: You added the sides": width and 2 * (width + high),
        "area: You took half": area / 2,
        "least: You took the share for another shape": area / other,
        "least: You took the share for a flue twice": area / 8,
        "least: You multiplied": area * share,
        "least: You took a tenth": area / 10,
        "least: You divided by the share": area / 0.15,
        "least: Your decimal point": area * 0.015,
        "across: You took the side of a square": least and sqrt(least),
        "across: You took the radius": across and across / 2,
        "across: You took the figure for a small": 0.2,
        "net: You took a square flue": across and across**2,
        "net: You squared the width across": across and pi * across**2,
    }
    return slips | (_cells(area, s("Chimney height"), made) if s.book == "CA" else {})


def _cells(area, tall, made):
    """Cells of Canada's table beside the right one."""
    table = [{k: float(v or 0) for k, v in row.items() if k[-2:] in ("mm", "m2", "_m")}
             for row in csv.DictReader(TABLE.open())]  # fmt: skip
    rows = sorted({row["opening_max_m2"] for row in table})
    lows = sorted({row["height_min_m"] for row in table})
    row = next(k for k, most in enumerate(rows) if area <= most)
    column = max(k for k, low in enumerate(lows) if low < tall)
    slips = {"across: You took the other end": made["most"],
             "most: You took the other end": made["across"]}  # fmt: skip
    for key, field in (("across", "flue_min_mm"), ("most", "flue_max_mm")):

        def at(r, c, field=field):
            return [one[field] / 1e3 for one in table
                    if one["opening_max_m2"] in rows[max(r, 0) : r + 1]
                    and one["height_min_m"] in lows[max(c, 0) : c + 1]]  # fmt: skip

        slips |= {
            f"{key}: You took the row": at(row - 1, column) + at(row + 1, column),
            f"{key}: You took the column of a taller": at(row, column + 1),
            f"{key}: You took the column of a shorter": at(row, column - 1),
        }
    return slips


def roof(s, made):
    pitch, ridge = s.word("Roof pitch"), s("Level to the ridge")
    slope = float(pitch.split("tangent")[1]) if "tangent" in pitch else float(pitch.split()[0]) / 12
    reach = {"US": s.us(120, 3048), "CA": 3.0, "UK": 2.3}[s.book]
    over = {"US": s.us(36, 914), "CA": 0.9, "UK": 1.0}[s.book]
    above = {"US": s.us(24, 610), "CA": 0.6, "UK": 0.6}[s.book]
    climb, near = made["climb"], min(ridge, reach)
    at_ridge = s.book == "UK" and ridge <= 0.6
    rise = climb if at_ridge else s("Rise of the roof") or slope * ridge
    return {
        "climb: You went all the way": slope * ridge,
        "climb: You went ": slope * reach,
        "climb: You measured along the slope": near * slope / hypot(1, slope),
        "climb: You gave how far": near,
        "need: You took the rule for the roof alone": over,
        "need: You took what stands near alone": climb + above,
        "need: You added both rules": climb + over + above,
        "need: You added the two rules": climb + over,
        "need: You added ": climb + over,
        "need: You stopped level": climb,
        "need: You gave the height over": above,
        "need: You measured from the ridge": above,
        "need: You took the rule for a chimney away": over,
        "need: You took the rule over the slope alone": over,
        "need: You took the rule sideways alone": climb,
        "need: You took the rule for a chimney at": rise + above,
        "need: You went up to the ridge": rise,
        "top: You measured from the roof": made["need"],
        "top: That is the roof": s("Roof at the uphill"),
        "count: You rounded down": made.get("count", 0) - 1,
        "count: You added one": made.get("count", 0) + 1,
    }


def mantel(s, made):
    out, near, opening = s("Projection"), made["near"], s("Top of the opening")
    flat = s("Molding")
    return {
        "near: You took the distance for a deep": 2 * near,
        "near: You took half": near / 2,
        "most: You started": flat and (flat - near) / 8,
        "most: You gave its distance": flat,
        "most: You took a quarter": flat and flat / 4,
        "most: You took the far end": s.us(12, 305) / 8,
        "away: You went on": 8 * out,
        "away: You gave the projection": out,
        "away: You took the figure for a flat": near,
        "away: You started": near + 8 * out,
        "away: You divided": out / 8,
        "away: You took the figure for a shelf deeper": 0.3,
        "away: You took the figure for flat trim": 0.15,
        "away: You added the projection": near + out,
        "level: You measured from the opening": made["away"],
        "level: You used the nearest": opening and opening + near,
        "level: You added the projection": opening and opening + out,
    }


def hearth(s, made):
    width, high, front, side = s("Opening width"), s("Opening height"), made["front"], made["side"]
    floor, step = s("Hearth in front"), s("Firebox floor, above the floor")
    fronts = {"US": [s.us(16, 406), s.us(20, 508)], "CA": [0.4, 0.45, 0.5], "UK": []}[s.book]
    sides = {"US": [s.us(8, 203), s.us(12, 305)], "CA": [0.2], "UK": []}[s.book]
    return {
        "area: You added the sides": high and 2 * (width + high),
        "area: You took half": high and width * high / 2,
        "area: You took the width twice": width**2,
        "raise: You measured from the floor": step,
        "raise: You added the levels": floor is not None and step + floor,
        "front: You took the figure for the sides": side,
        "front: You took the figure of another": [value for value in fronts if value != front],
        "side: You took the figure for the front": front,
        "side: You took both sides": 2 * side,
        "side: You took the figure of another": [value for value in sides if value != side],
        "whole: You added one side": width + side,
        "whole: That is the opening": width,
        "whole: You added the front": width + 2 * front,
    }


def lintel(s, made):
    span, cover, beam = s("Span"), s("Wall over"), s("Load of the beam")
    weight, bears = made.get("weight", 0), "A beam bears" in s.story
    load = weight + (beam or 0)
    return {
        "height: You took the triangle": span / 2,
        "height: You took the whole span": span,
        "height: You took all": cover,
        "weight: You took a rectangle": 2 * weight,
        "weight: You took a triangle": weight / 2,
        "weight: You took all": cover and weight * cover / (span / (1 if bears else 4)),
        "carried: You left the beam": weight,
        "carried: You left the wall": beam,
        "carried: You took half": beam and weight + beam / 2,
        "end: You gave all": load,
        "end: You halved": load / 4,
        "long: You added one": span + s.us(4, 102),
        "long: You gave the span": span,
    }


def throat(s, made):
    deep, area = s("Throat, front"), made["area"]
    first = made.get("first") or s("Width at the front")
    last = made.get("last") or s("Width at the back")
    width, spare, flue, vent = (
        s("Opening width"), made.get("spare"), s("Net area of the flue"), s("Free area of the air")
    )  # fmt: skip
    slips = {
        "area: You took the front": deep and first * deep,
        "area: You took the back": deep and last * deep,
        "area: You added the widths": 2 * area,
        "spare: You added": flue and area + flue,
        "spare: You subtracted": spare and -spare,
        "spare: You gave the throat": area,
        "spare: You held the vent": vent and vent - area,
        "vent: You took all": area,
        "vent: You took a quarter": area / 4,
        "vent: You doubled": 2 * area,
    }
    for key, here, other in (("first", first, last), ("last", last, first)):
        slips |= {
            f"{key}: You took the opening's": width,
            f"{key}: You took the other edge": other,
            f"{key}: You took the back": s("Back width"),
            f"{key}: You let one side": width and (width + here) / 2,
        }
    return slips


def chamber(s, made):
    throat, narrow, up = s("Width at the throat"), s("Flue,"), s("Upright")
    lean, other = (30, 45) if "corbelled" in s.story else (45, 30)
    run, rise, lean, other = made["run"], made["rise"], radians(lean), radians(other)
    return {
        "run: You took both sides": 2 * run,
        "run: You closed the flue": throat and throat / 2,
        "run: You added the flue": throat and (throat + narrow) / 2,
        "rise: You counted the lean": run * tan(lean),
        "rise: You measured along": run / sin(lean),
        "rise: You took both sides": 2 * rise,
        "rise: You took the lean for another": run / tan(other),
        "whole: You left the upright": rise,
        "whole: You took the upright": up and rise - up,
        "whole: You counted the lean": up and run * tan(lean) + up,
        "tallest: You took the width at": throat,
        "tallest: That is the least": up and rise + up,
        "tallest: You added the upright": up and made["tallest"] + up,
    }


def draft(s, made):
    top, mouth, section = s("Top of the flue"), s("Top of the opening"), s("One flue section")
    height, pull = made["height"], made["pull"]
    weight = {n[:4]: float(t.split()[0]) for n, t in s.words.items() if n[:4] in ("Outd", "Flue")}
    tall, factor = (height / FT, 47.88) if s.feet else (height, 9.80665)
    return {
        "height: You started": top,
        "height: You added": top and top + mouth,
        "pull: You started": top and pull * top / height,
        "pull: You took the flue gas": tall * factor * weight["Flue"] if weight else None,
        "pull: You took the outdoor": tall * factor * weight["Outd"] if weight else None,
        f"pull: You left out the factor {47.88 if s.feet else 9.81}": pull / factor,
        "more: You gave the whole pull": section and pull * (height + section) / height,
        "more: You gave the pull": pull,
    }


def wood(s, made):
    hot, cold = s("Inner face"), s("Room")
    chain = [s.word(n) for n in ("Firebrick", "Brick behind", "Closed", "Studs")]
    more = next((t for n, t in s.words.items() if "more" in n), None)
    slips = {
        "first: You shared alike": hot - (hot - cold) / 4,
        "first: That is the room": cold,
        "first: You left out gap": None,
        "first: You counted up": cold + hot - made["first"],
        "hours: You took the end of the fire": 0,
        "hours: You took the end of the table": 12,
    }
    if s.level == 1:
        return slips
    lining, brick, gap, studs = (float(re.search(r"[\d.]+", text)[0]) for text in chain)

    def after(part, whole):
        return hot - (hot - cold) * part / whole

    whole = lining + brick + gap + studs
    slips |= {
        "first: You left out gap": after(lining, lining + brick),
        "back: You stopped": after(lining, whole),
        "back: You left the lining": after(brick, whole),
        "back: You went across": after(whole - studs, whole),
    }
    if more:
        extra = float(re.search(r"[\d.]+", more)[0])
        slips |= {
            "studs: You left out": after(whole - studs, whole),
            "studs: You left the": after(whole - studs + extra, whole),
            "studs: You stopped": after(lining + brick + extra, whole + extra),
        }
    return slips


def setting(s, made):
    lifts = [number(t) for n, t in s.words.items() if re.match(r"Lift \d", n)]
    wanted, bed, whole = s("Top of the last"), made["bed"], made["whole"]
    count = len(lifts) or int(s.word("Lifts, and"))
    slips = {
        "bed: You gave all": wanted - whole,
        "bed: You left out": (wanted - whole) / (count - 1),
        "bed: You counted": (wanted - whole) / (count + 1),
    }
    if lifts:
        used = s("Thickest") if bed > s("Thickest") else s("Thinnest")
        slips |= {
            "whole: You left the last": sum(lifts[:-1]),
            "whole: You left the first": sum(lifts[1:]),
            "second: You counted one bed": lifts[0] + lifts[1] + bed,
            "second: You left the beds": lifts[0] + lifts[1],
            "second: You counted a bed over": lifts[0] + lifts[1] + 3 * bed,
            "miss: You took one bed": abs(bed - used),
            "miss: You gave all": count * used,
        }
    return slips


def lifting(s, made):
    long, wide, reach, weight = s("Length"), s("Width"), s("Reach"), made["weight"]
    return {
        "weight: You took the length twice": wide and weight * long / wide,
        "weight: You took half": weight / 2,
        "weight: You divided": weight * 12 if s.feet else None,
        "weight: Your decimal": None if s.feet else weight * 10,
        "one: You took": 51 * LB,
        "one: You divided": reach and 51 * LB * reach / (10 * IN),
    }


SLIPS = {f.__name__: f for f in (flue, roof, mantel, hearth, lintel, throat, chamber, draft, wood,
                                 setting, lifting)}  # fmt: skip


def slips(task):
    """Step and beginning of a sentence to the figure, or the figures, that such a slip gives."""
    assert task.kind in SLIPS, f"work the mistakes of {task.kind} in tests/naive/slips.py"
    sheet = Sheet(task)
    return SLIPS[task.kind](sheet, WORKED[task.kind](sheet))
