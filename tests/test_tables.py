"""Published figures as the package holds them, against the rows of ``data/`` turned into SI by
pint, and against single cells as the books print them.
"""

import csv
import math
from fractions import Fraction
from pathlib import Path

import pytest

from fireplace_calc.base import tables
from fireplace_calc.base.tables import canada, draft, liners
from fireplace_calc.base.tables.standing_person import standing_person
from fireplace_calc.base.units import InputError, registry

DATA = Path(__file__).resolve().parent.parent / "data"


def rows(name):
    with (DATA / name).open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def si(text, unit):
    """A printed number in SI, by pint's own definitions; nothing where nothing is printed."""
    if text == "":
        return None
    return registry().Quantity(float(text), unit).to_base_units().magnitude


def same(found, wanted):
    assert len(found) == len(wanted)
    for one, other in zip(found, wanted, strict=True):
        assert one == (None if other is None else pytest.approx(other, rel=1e-9))


def test_every_clay_liner_is_the_row_of_its_table():
    table = rows("round_liners.csv")
    assert [*liners.round_liners()] == [r["size"] for r in table]
    for r in table:
        liner = liners.round_liner(r["size"])
        wanted = (("inside_diameter_in", "in"), ("wall_in", "in"), ("net_area_in2", "in**2"))
        same((liner.inside, liner.wall, liner.net_area), [si(r[c], unit) for c, unit in wanted])
        assert (liner.size, liner.source.text) == (r["size"], r["source"])
        assert liner.source.confidence == r["confidence"]
    table = rows("rectangular_liners.csv")
    assert [*liners.rectangular_liners()] == [r["size"] for r in table]
    for r in table:
        liner = liners.rectangular_liner(r["size"])
        a, b, wall = (si(r[c], "in") for c in ("outside_a_in", "outside_b_in", "wall_in"))
        same((liner.outside_a, liner.outside_b, liner.wall), (a, b, wall))
        same((liner.inside_a, liner.inside_b), (a - 2 * wall, b - 2 * wall))
        same([liner.net_area], [si(r["net_area_in2"], "in**2")])


@pytest.mark.parametrize(
    ("size", "square_inches"),
    [("8", 50), ("12", 113), ("15", 176), ("8.5x13", 76), ("13x13", 127), ("16x20", 222)],
)
def test_net_areas_as_the_code_prints_them(size, square_inches):
    """IRC tables R1003.14(1) and (2), 2021; from memory."""
    found = liners.rectangular_liner(size) if "x" in size else liners.round_liner(size)
    assert found.net_area == pytest.approx(si(square_inches, "in**2"))


@pytest.mark.parametrize(
    "written", ["8.5x13", "13x8.5", "8.5 x 13 in", "13 by 8.5", '8.5" × 13"', "8.5X13"]
)
def test_a_liner_is_found_however_it_is_written(written):
    assert liners.rectangular_liner(written).size == "8.5x13"


def test_an_unknown_key_says_what_the_table_holds():
    with pytest.raises(InputError) as caught:
        liners.round_liner("11")
    message = str(caught.value)
    assert "Flue size is '11'" in message and "8, 10, 10.75, 12" in message
    assert message.endswith("; for another use its own size.")
    with pytest.raises(InputError, match="Material is 'lead'.*concrete") as caught:
        tables.density("lead")
    assert "own size" not in str(caught.value)
    for ask in (draft.coefficient, draft.wood_analysis):
        with pytest.raises(InputError, match=r"is 'x', but the table holds only \w+"):
            ask("x")


def test_densities_soils_and_crickets_are_the_rows_of_their_tables():
    """Concrete 150 lb/ft3; sand 2000 lb/ft2 (IRC table R401.4.1); a 12:12 roof, half the width
    (IRC table R1003.20).
    """
    for r in rows("densities.csv"):
        same([tables.density(r["material"])], [si(r["density_pcf"], "lb/ft**3")])
        assert tables.densities()[r["material"]][1].confidence == r["confidence"]
    for r in rows("soil_bearing.csv"):
        same([tables.soil_bearing()[r["soil"]][0]], [si(r["bearing_psf"], "lbf/ft**2")])
        assert tables.soil_bearing()[r["soil"]][1].text == r["source"]
    assert tables.density("concrete") == pytest.approx(si(150, "lb/ft**3"))
    assert tables.soil_bearing()["sand"][0] == pytest.approx(si(2000, "lbf/ft**2"))
    wanted = [(Fraction(r["roof_rise_per_12"]) / 12, r) for r in rows("crickets.csv")]
    for found, (pitch, r) in zip(tables.crickets(), wanted, strict=True):
        same(found, (float(pitch), float(r["height_over_width"])))
    assert (1.0, 0.5) in tables.crickets()


def test_the_figures_of_the_draft_are_the_rows_of_their_tables():
    for r in rows("draft_coefficients.csv"):
        found = draft.coefficients()[r["name"]]
        same((found.value, found.low, found.high), [si(r[c], "") for c in ("value", "low", "high")])
        assert (found.unit, found.source.text) == (r["unit"], r["source"])
        assert draft.coefficient(r["name"]) == float(r["value"])
    for r in rows("wood_analysis.csv"):
        wood = draft.wood_analysis(r["wood"])
        shares = ("carbon", "hydrogen", "oxygen", "nitrogen", "ash")
        same([getattr(wood, share) for share in shares], [float(r[share]) for share in shares])
        assert sum(getattr(wood, share) for share in shares) == pytest.approx(1.0, abs=2e-3)
    for r in rows("conductivities.csv"):
        found, source = draft.conductivities()[r["material"]]
        assert (found, source.text) == (float(r["conductivity_w_mk"]), r["source"])


def test_bends_contractions_and_roof_winds_are_the_rows_of_their_tables():
    bends = rows("mitred_bends.csv")
    angles, losses = draft.bends()
    same(angles, [si(r["angle_deg"], "degree") for r in bends])
    same(losses, [float(r["loss"]) for r in bends])
    pairs = [
        (ratio, angle, loss)
        for ratio, (angles, losses) in draft.contractions().items()
        for angle, loss in zip(angles, losses, strict=True)
    ]
    for found, r in zip(pairs, rows("contractions.csv"), strict=True):
        wanted = (si(r["included_angle_deg"], "degree"), float(r["loss"]))
        same(found, (float(r["area_ratio"]), *wanted))
    for found, r in zip(draft.roof_winds(), rows("roof_wind.csv"), strict=True):
        ends = [math.radians(float(r[c])) for c in ("pitch_min_deg", "pitch_max_deg")]
        same((found.pitch_low, found.pitch_high), ends)
        named = ("low", "high")
        same([getattr(found, name) for name in named], [float(r[name]) for name in named])
        assert (found.case, found.source.text) == (r["case"], r["source"])
        assert -1 <= found.low < found.high <= 1


BANDS = ("opening_min_m2", "opening_max_m2", "height_min_m", "height_max_m")


def _band(cell):
    return cell.opening_low, cell.opening_high, cell.height_low, cell.height_high


def test_canadas_cells_are_the_rows_of_their_tables():
    """Tables 9.21.2.5.A and B; the first round cell is 110 to 170 mm, the first rectangular one
    200 by 200.
    """
    table = rows("canada_round_flues.csv")
    for cell, r in zip(canada.canada_round_flues(), table, strict=True):
        same(_band(cell), [float(r[c]) for c in BANDS])
        same((cell.flue_low, cell.flue_high), [si(r[f"flue_{e}_mm"], "mm") for e in ("min", "max")])
        assert cell.source.text == r["source"]
    first = canada.canada_round_flues()[0]
    same((first.flue_low, first.flue_high), (0.110, 0.170))
    table = rows("canada_rectangular_flues.csv")
    for (cell, *flues), r in zip(canada.canada_rectangular_flues(), table, strict=True):
        same(_band(cell), [float(r[c]) for c in BANDS])
        assert cell.flue_low is cell.flue_high is None
        for found, end in zip(flues, ("min", "max"), strict=True):
            sides = [si(r[f"flue_{end}_{side}_mm"], "mm") for side in ("width", "depth")]
            assert found is None if None in sides else found == pytest.approx(sides)
    cells = canada.canada_rectangular_flues()
    assert cells[0][1] == pytest.approx((0.2, 0.2))
    assert len(cells) == 48 and sum(least is None for _, least, _ in cells) == 9
    assert all((least is None) is (most is None) for _, least, most in cells)


def test_a_clause_is_cited_as_a_reader_looks_it_up():
    books = (
        "us_irc_sources.csv",
        "canada_sources.csv",
        "uk_sources.csv",
        "other_codes_sources.csv",
        "practice_sources.csv",
    )
    cited = tables.rule_sources()
    wanted = {r["id"]: r for book in books for r in rows(book)}
    assert cited.keys() == wanted.keys()
    for key, r in wanted.items():
        ending = f"; {r['edition']}" if r["edition"] else ""
        assert cited[key].citation == f"{r['source']}, {r['section']}{ending}"
        assert (cited[key].key, cited[key].source.confidence) == (key, r["confidence"])


def test_the_person_for_scale_stands_on_the_floor_and_is_closed():
    """1.75 m high; every edge of a piece belongs to two of its triangles, once each way."""
    pieces = standing_person()
    assert min(p.points[:, 2].min() for p in pieces) == 0.0
    assert max(p.points[:, 2].max() for p in pieces) == pytest.approx(1.75)
    for piece in pieces:
        edges = [(int(f[k]), int(f[k - 1])) for f in piece.faces for k in range(3)]
        assert len(set(edges)) == len(edges) and {(b, a) for a, b in edges} == set(edges)
