"""What an assessment says: words and figures of findings, tables, texts and files, each read back
and held against the record it was written from.
"""

import csv
import html
import re
import runpy
import warnings
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pint
import pytest

from fireplace_calc import PACKS, assess, change, load
from fireplace_calc.base.reading import to_si
from fireplace_calc.base.resources import example, made_by
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import CUYD, MILLIMETRES, POUND, SQFT, SYSTEMS
from fireplace_calc.design.records import Design
from fireplace_calc.draft.cases import CASES
from fireplace_calc.report import books, draft_report, tables
from fireplace_calc.report.alternatives import differences, side_by_side, side_by_side_table
from fireplace_calc.report.assumed_inputs import to_enter
from fireplace_calc.report.canada_agreement import compare_with_canada
from fireplace_calc.report.csv_files import FINDING_COLUMNS, TAKEOFF_COLUMNS, harmless, write_csv
from fireplace_calc.report.plain_summary import summary
from fireplace_calc.report.sentences import (
    answer,
    asked,
    compared,
    quantity,
    sentence,
    tally,
    weight,
)
from fireplace_calc.report.steps import step_words
from fireplace_calc.takeoff.cost import prices

BOATHOUSE = assess(load(DATA / "designs" / "boathouse-laid.toml"))
PLAIN = assess(Design())
HEARTH = next(f for f in PLAIN.findings if f.key == "HTH-07")
METRIC = "millimetres"


def finding(provided, required, margin, unit="in", verdict="meets", **changes):
    """A finding with these figures."""
    return HEARTH._replace(
        assumed=(),
        provided=provided,
        required=required,
        margin=margin,
        unit=unit,
        verdict=verdict,
        **changes,
    )


# -- figures of a finding ------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("found", "american", "metric"),
    [
        (finding(24.0, 16.0, 8.0), ("2'-0\"", "1'-4\"", '8"'), ("610 mm", "406 mm", "203 mm")),
        (finding(16.0, 16.0, 0.0), ("1'-4\"", "1'-4\"", '0"'), ("406 mm", "406 mm", "0 mm")),
        (finding(16.001, 16.0, 0.001), ("16.001 in", "16.000 in", "0.001 in"), None),
        (finding(8.6, 10.0, 1.4, "-"), ("8.6", "10", "1.4"), ("8.6", "10", "1.4")),
        (
            finding(999.9, 1000.0, -0.1, "psf"),
            ("999.9 psf", "1,000 psf", "-0.1 psf"),
            ("999.900 psf", "1000.000 psf", "-0.100 psf"),
        ),
        (
            finding(1236.4, 1500.0, 263.6, "psf"),
            ("1,236 psf", "1,500 psf", "263.6 psf"),
            ("59.2 kPa", "71.8 kPa", "12.6 kPa"),
        ),
        (
            finding(-1236.4, 0.0, -1236.4, "lbf"),
            ("-1,236 lbf", "0 lbf", "-1,236 lbf"),
            ("-5.5 kN", "0 kN", "-5.5 kN"),
        ),
        (finding(2.0, 4.0, -2.0, "count"), ("2", "4", "-2"), None),
        (finding(30.0, 45.0, 15.0, "deg"), ("30.0°", "45.0°", "15.0°"), None),
        (finding(5.0, 3.0, 2.0, "Pa"), ("5.0 Pa", "3.0 Pa", "2.0 Pa"), None),
        (finding(9.0, 18.0, -9.0, "K"), ("16 °F", "32 °F", "-16 °F"), ("9 K", "18 K", "-9 K")),
        (finding("brick", "stone", None, "word"), ("brick", "stone", ""), None),
        (finding(None, None, None), ("", "", ""), None),
    ],
)
def test_figures_stand_in_the_readers_units(found, american, metric):
    """By hand: 16 in is 406.4 mm, 9 K is 16.2 F, 1236.4 psf are 59.2 kPa; what rounding would make alike stands finer."""
    assert compared(found) == american
    spaced = tuple(text.replace(",", " ") for text in american)
    assert compared(found, METRIC) == (metric or spaced), "no comma at a metric thousand"


def test_which_way_a_limit_binds():
    """24 in where 16 is asked, with 8 to spare, is a least; with 8 lacking, a most."""
    assert asked(finding(24.0, 16.0, 8.0)) == "at least 1'-4\""
    assert asked(finding(8.0, 16.0, -8.0)) == "at least 1'-4\""
    assert asked(finding(24.0, 16.0, -8.0)) == "at most 1'-4\""
    assert asked(finding(8.0, 16.0, 8.0), METRIC) == "at most 406 mm"
    assert asked(finding(16.0, 16.0, 0.0)) == "1'-4\"", "just met: it does not tell which"
    assert asked(finding("brick", "stone", None, "word")) == "stone"
    assert asked(finding(None, None, None)) == ""


def test_a_finding_in_words():
    """What is there, what is asked, what is lacking, and why; only what is known."""
    told = {"title": "Step", "note": "seen there.", "why": "a reason.", "edition": "2021"}
    where = "(HTH-07, R1001.10, 2021)"
    short = finding(8.0, 16.0, -8.0, verdict="falls short", **told)
    assert sentence(short) == (
        f'Step: 8" provided, 1\'-4" required, 8" too little. Seen there. A reason. {where}'
    )
    much = short._replace(provided=24.0)
    assert "610 mm provided, at most 406 mm required, 203 mm too much. " in sentence(much, METRIC)
    assert "1'-4\" required. Seen" in sentence(short._replace(verdict="meets", margin=8.0))
    assert "1'-4\" required. Seen" in sentence(short._replace(provided=16.0, margin=0.0))
    word = short._replace(provided="wood", required="brick", margin=None, unit="word", note="")
    assert sentence(word) == f"Step: wood provided, brick required. A reason. {where}"
    assert sentence(short._replace(verdict="does not apply")) == (
        f"Step: Seen there. A reason. {where}"
    )
    unknown = short._replace(verdict="not checked", provided=None, required=None, margin=None)
    assert sentence(unknown) == f"Step: Seen there. A reason. {where}"


def test_a_book_answers_in_a_line():
    """Every clause that binds; a book without a clause is silent, one whose clauses do not bind
    says so.
    """
    there = finding(8.0, 16.0, -8.0, verdict="falls short", key="A-1")
    asking = finding(None, 16.0, None, verdict="not checked", key="A-2")
    nothing = finding(None, None, None, key="A-3")
    assert answer(books.Answer("book", (there, asking, nothing), silent=False)) == (
        '✗ falls short 8" for 1\'-4" (A-1); ? not checked 1\'-4" required (A-2); ✓ meets (A-3)'
    )
    tall = finding(23.0, 22.0, -1.0, verdict="falls short", key="A-1")
    assert answer(books.Answer("book", (tall,), silent=False)) == (
        "✗ falls short 1'-11\" for at most 1'-10\" (A-1)"
    )
    assert answer(books.Answer("book", (), silent=False)) == "does not apply"
    assert answer(books.Answer("book", (), silent=True)) == "silent"


def test_one_is_one_and_many_are_many():
    counts = {"falls short": 1, "meets": 12, "not checked": 2}
    assert tally(SimpleNamespace(counts=counts, assumed={})) == (
        "1 falls short, 2 not checked, 12 meet, 0 do not apply"
    )
    assert tally(SimpleNamespace(counts=counts, assumed={"meets": 7})) == (
        "1 falls short, 2 not checked, 12 meet (7 of them on an assumption), 0 do not apply"
    )


@pytest.mark.parametrize(
    ("amount", "unit", "american", "metric"),
    [
        (1.0, "yd3", "1.00 yd³", f"{CUYD:.2f} m³"),
        (10.0, "ft2", "10.0 ft²", f"{10 * SQFT:.2f} m²"),
        (1.0, "block", "1 block", None),
        (90.0, "block", "90 blocks", None),
        # a pound is 0.45359237 kg by definition: 142.97 kg, 22.68 kg, 302.1 kg
        (3.94, "80-lb bag", "3.9 80-lb bags", "143 kg (6 bags of 25 kg)"),
        (1.0, "50-lb pail", "1 50-lb pail", "23 kg (1 pail of 25 kg)"),
        (0.333, "ton", "0.33 tons", "0.30 t"),
        (2085.0, "brick", "2085 brick", None),
        (1.0, "brick", "1 brick", None),
    ],
)
def test_quantities_are_told_as_they_are_sold(amount, unit, american, metric):
    row = replace(PLAIN.takeoff[0], unit=unit)
    assert quantity(amount, row) == american
    assert quantity(amount, row, METRIC) == (metric or american)


def test_no_weight_is_not_nought():
    assert (weight(0.0), weight(100.0), weight(100.0, METRIC)) == (
        "not counted",
        "220 lb",
        "100 kg",
    )


# -- designs side by side ------------------------------------------------------------------------
def test_what_differs_is_told_input_by_input():
    first = Design()
    other = change(
        first,
        {
            "name": "Another",
            "method": "modular",
            "flue.sections": 12,
            "opening.width": "40 in",
            "chimney.rain_cap": "yes",
            "flue.relined": "unknown",
            "clearance.accessory": "yes",
            "surround.trim": [{"name": "shelf"}, {"name": "leg"}],
        },
    )
    assert differences(first, other, METRIC) == (
        "Way of building modular",
        "Opening width 1 016 mm",
        "Flue sections 12",
        "Relined unknown",
        "Rain cap yes",
        "Fireplace accessory fitted yes",
        "Mantel and trim: 2 pieces, changed",
    )
    assert "Rain cap no" in differences(other, first) and "Relined no" in differences(other, first)


def test_side_by_side_stands_each_designs_own_figure():
    """Sizes as they were given; weight in pounds of 0.45359237 kg."""
    none = change(Design(), {"flue.size": "8.5x8.5"})
    known = {
        item: price for item, price in prices().items() if item not in ("Mortar", "Hearth stone")
    }
    results = [PLAIN, BOATHOUSE, assess(none)]
    told = dict(side_by_side(results, priced=known))
    assert all(len(texts) == 3 for texts in told.values())
    assert told["Differs from the first in"][0] == ""
    assert told["Differs from the first in"][2] == "Flue size 8.5x8.5"
    assert told["Opening"][1] == "3'-6\" wide, 3'-0\" high, 1,512.0 in²"
    assert told["Raised by"][:2] == ('0"', '6"')
    ratio = BOATHOUSE.geometry.frame.opening_area / BOATHOUSE.geometry.frame.bore.area
    assert told["Flue"][1] == f"round 15, 20 sections, 1/{ratio:.1f} of the opening"
    assert ratio == pytest.approx(1512 / (np.pi * 7.5**2), rel=1e-6)
    for k, result in enumerate(results):
        assert to_si(told["Chimney top over floor"][k], "length") == pytest.approx(
            result.geometry.frame.crown_top, abs=1e-3
        )
        assert read(told["Face velocity, sizing mode"][k]) == pytest.approx(
            result.draft.sizing_velocity, abs=0.002
        )
        assert told["Odds, operating mode"][k] == f"{result.odds.words}; {result.odds.dying_words}"
        assert told["Not checked"][k] == str(result.counts["not checked"])
        for row, findings in (
            ("Falls short of US IRC 2021", result.findings),
            ("Falls short in draft", result.judgement),
            ("Falls short in structure", result.structure.findings),
        ):
            short = [f"{f.title} ({f.key})" for f in findings if f.verdict == "falls short"]
            assert told[row][k] == ("; ".join(short) or "nothing")
        assert told["Hours, one mason"][k] == f"{result.work.hours:.0f}"
        assert told["Material costs"][k].endswith(
            "USD, invented example prices, without a price for hearth stone, mortar"
        )
    own = {item: replace(price, confidence="mine") for item, price in prices().items()}
    alone = dict(side_by_side([BOATHOUSE], priced=own))
    assert "Differs from the first in" not in alone
    assert re.fullmatch(r"[\d,]+ USD", alone["Material costs"][0])
    again = dict(side_by_side([PLAIN, assess(Design())]))
    assert again["Differs from the first in"] == ("", "nothing")
    assert side_by_side([]) == ()


def test_side_by_side_as_a_table_has_a_column_each():
    table = side_by_side_table([PLAIN, BOATHOUSE], ["One", "Two"], METRIC)
    assert list(table.columns) == ["One", "Two"] and table.index[0] == "Differs from the first in"
    assert list(table.loc["Raised by"]) == ["0 mm", "152 mm"]


# -- the draft -----------------------------------------------------------------------------------
def read(text):
    """A printed figure in SI."""
    *number, unit = text.split()
    units = {"ft/s": 0.3048, "m/s": 1.0, "Pa": 1.0, "cfm": 0.0283168 / 60, "L/s": 1e-3}
    return float("".join(number).replace(",", "")) * units[unit]


def kelvin(text):
    number, unit = text.split()
    return float(number) + 273.15 if unit == "°C" else (float(number) + 459.67) / 1.8


@pytest.mark.parametrize("units", SYSTEMS)
def test_the_table_of_evenings_reads_back(units):
    """Every cell, read as a reader would, is the draft's own figure."""
    flows, spills = BOATHOUSE.draft.flows, BOATHOUSE.draft.spills
    for k, row in enumerate(draft_report.case_rows(BOATHOUSE, units)):
        case, face, carries, draft, pull, margin, gas, speed, fans = row
        assert case == CASES[k]
        for text, value in ((face, flows.face[k]), (carries, spills.capture[k])):
            assert read(text) == pytest.approx(float(value), abs=0.006)
        assert read(speed) == pytest.approx(float(flows.speed[k]), abs=0.006)
        assert read(draft) == pytest.approx(float(flows.draft[k]), abs=0.051)
        assert read(pull) == pytest.approx(float(flows.pull[k]), abs=0.051)
        pascals, share = margin.split(", ")
        assert read(pascals) == pytest.approx(float(spills.margin[k]), abs=0.051)
        assert float(share.removesuffix(" %")) == pytest.approx(100 * spills.share[k], abs=0.51)
        foot, top = gas.split(", ")
        assert kelvin(foot) == pytest.approx(float(flows.foot[k]), abs=0.3)
        assert kelvin(top) == pytest.approx(float(flows.top[k]), abs=0.3)
        assert read(fans) == pytest.approx(float(spills.tipping_fan[k]), abs=6e-4)


def test_an_evening_that_stalls_has_no_face_velocity():
    stalled = assess(
        change(BOATHOUSE.design, {"house.exhaust": "2000 L/s", "house.leakage": "0.5"})
    )
    for k, row in enumerate(draft_report.case_rows(stalled)):
        assert bool(stalled.draft.flows.stalled[k]) == (row[1] == "none")
        if row[1] == "none":
            assert len(row) == len(draft_report.COLUMNS) and row[8] == "smokes with no fan on"
            assert read(row[2]) == pytest.approx(float(stalled.draft.spills.capture[k]), abs=0.002)
            margin = float(stalled.draft.spills.margin[k])
            assert row[5] == "under -100 Pa" and margin < -100 or row[5] == f"{margin:z.1f} Pa"
            assert row[3:5] == ("", "") and row[6:8] == ("", "")
    assert stalled.draft.flows.stalled.any()


def test_no_fan_is_needed_where_it_smokes_already():
    result = assess(BOATHOUSE.design)
    none = np.array([0.0, 0.1, 0.1, 0.1])
    spills = replace(result.draft.spills, tipping_fan=none)
    vars(result)["draft"] = replace(result.draft, spills=spills)
    fans = [row[8] for row in draft_report.case_rows(result, METRIC)]
    assert fans == ["smokes already", *["100 L/s"] * 3]


def test_what_the_draft_is_spent_on_adds_up():
    """Chimney, wind and house pull one way, the losses the other; each evening's column closes."""
    rows = {name: np.array(values, float) for name, *values in draft_report.loss_rows(BOATHOUSE)}
    driving = [rows.pop(n) for n in ("draft of the chimney", "wind at top and walls")]
    own, added = rows["pull of the warm house by itself"], rows["pull of fire and fans"]
    assert own + added == pytest.approx(BOATHOUSE.draft.flows.pull, abs=0.101)
    assert own == pytest.approx(BOATHOUSE.draft.spills.stack, abs=0.051) and own[0] > own[1] > 0
    assert sum(driving) == pytest.approx(sum(rows.values()), abs=0.05 * len(rows) + 0.1)
    assert all(values.any() for values in rows.values()), "a loss of nought is left out"
    assert {"mouth", "throat", "friction", "velocity head"} <= rows.keys()


def test_the_odds_in_words():
    odds = BOATHOUSE.odds
    said = draft_report.likely(BOATHOUSE, METRIC)
    low, high, middle = re.search(
        r"velocity (.*? m/s) to (.*? m/s), half of them over (.*? m/s)", said
    ).groups()
    assert [read(v) for v in (low, middle, high)] == pytest.approx(list(odds.face), abs=0.006)
    assert f"; {100 * odds.below:.0f} of 100 stay under 0.24 m/s" in said
    assert f"{odds.draws:,}".replace(",", " ") in said and odds.words in said
    assert odds.dying_words in said and 0 <= odds.dying <= 1
    sized, mild, words, label, air = draft_report.beside(BOATHOUSE)
    assert air == draft_report.air_drawn(BOATHOUSE)
    velocities = re.findall(r"[\d.]+ ft/s", f"{sized} {mild}")
    flows, spills = BOATHOUSE.draft.flows, BOATHOUSE.draft.spills
    wanted = (BOATHOUSE.draft.sizing_velocity, flows.face[1], spills.capture[1])
    assert CASES[1] == "mild"
    assert [read(v) for v in velocities] == pytest.approx([float(v) for v in wanted], abs=0.002)
    assert (words, label) == (
        f"{odds.words.capitalize()} evenings; {odds.dying_words}.",
        draft_report.LABEL,
    )
    assert f"velocity {velocities[0]} (" in draft_report.sized(BOATHOUSE)


# -- the whole as text and tables ----------------------------------------------------------------
def test_the_summary_tells_sizes_checks_draft_and_order():
    text = " ".join(summary(BOATHOUSE).split())
    f = BOATHOUSE.geometry.frame
    assert text.startswith("Boathouse club room, laid Invented example")
    for said in (
        "Opening 3'-6\" wide, 3'-0\" high, 1,512.0 in²",
        "Firebox 1'-11\" deep, back",
        "Flue round 15, 20 sections of 1'-0\", inside 176.7 in², 1/8.6 of the opening",
        f"Weight {BOATHOUSE.weight / POUND:,.0f} lb as built",
        f"Checks against US IRC 2021: {tally(BOATHOUSE)}",
    ):
        assert said in text, said
    top, over = re.search(
        r"Chimney top (.*?) above the floor, (.*?) above the hearth", text
    ).groups()
    assert to_si(top, "length") == pytest.approx(f.crown_top, abs=1e-3)
    assert to_si(over, "length") == pytest.approx(f.crown_top - f.hearth, abs=1e-3)
    back, throat = re.search(r"deep, back (.*?) wide, throat ([\d .]+ in)²", text).groups()
    assert to_si(back, "length") == pytest.approx(f.back_width, abs=1e-3)
    assert to_si(f"{throat}2", "area") == pytest.approx(f.throat_area, abs=1e-4)
    for one in (*BOATHOUSE.findings, *BOATHOUSE.judgement):
        wanted = one.verdict in ("falls short", "not checked")
        assert (sentence(one) in text) == wanted, one.key
    assert "Drawn differently" not in text
    shallow = assess(change(Design(), {"firebox.depth": "12 in"}))
    assert shallow.geometry.frame.adjusted
    told = " ".join(summary(shallow, width=70).split())
    for said in shallow.geometry.frame.adjusted:
        assert f"Drawn differently from the input: {said}" in told


def test_the_order_in_the_summary_stands_in_columns():
    """Name, net, to order, weight, and the weight of one piece where somebody lifts it."""
    lines = summary(BOATHOUSE).split("\n")
    start = next(k for k, line in enumerate(lines) if line.startswith("Takeoff"))
    for row, line in zip(BOATHOUSE.takeoff, lines[start + 1 :], strict=False):
        assert line[:26].rstrip() == row.item
        assert line[26:42].strip() == quantity(row.net, row)
        assert line[42:60].strip() == quantity(row.order, row)
        assert line[60:73].strip() == weight(row.weight_kg)
        one = line[73:].strip()
        assert (one == "") == (not row.piece_kg or row.unit == "brick")
        assert not one or read_pounds(one) == pytest.approx(row.piece_kg, abs=0.5 * POUND + 1e-6)


def read_pounds(text):
    return float(text.removesuffix(" lb").replace(",", "")) * POUND


@pytest.mark.parametrize("width", [40, 72, 100])
def test_no_line_of_the_summary_is_longer_than_asked(width):
    lines = summary(BOATHOUSE, width=width).splitlines()
    prose = [line for line in lines if not re.match(r"\S.*\d (lb|kg)$|Takeoff", line)]
    assert max(map(len, prose)) <= width
    words = " ".join(summary(BOATHOUSE, width=10**4).split())
    assert " ".join(" ".join(lines).split()) == words, "only broken, nothing lost"


def cells(table):
    return [tuple(row) for row in table.itertuples(index=False)]


def test_the_tables_hold_every_finding_part_and_level():
    for units in SYSTEMS:
        for table, found in (
            (tables.findings_table(BOATHOUSE, units), BOATHOUSE.findings),
            (tables.judgement_table(BOATHOUSE, units), BOATHOUSE.judgement),
        ):
            for row, one in zip(cells(table), found, strict=True):
                assert row[1:3] == (one.said, one.title) and row[3:6] == compared(one, units)
                assert row[6] == one.clause and row[-3::2] == (one.why, one.key)
                assert row[-2] == " ".join(filter(None, (one.note, to_enter(one))))
        order = zip(cells(tables.takeoff_table(BOATHOUSE, units)), BOATHOUSE.takeoff, strict=True)
        for row, one in order:
            piece = weight(one.piece_kg, units) if one.piece_kg else ""
            amounts = (quantity(one.net, one, units), quantity(one.order, one, units))
            assert row[:4] == (one.item, one.material, *amounts)
            assert row[4:] == (weight(one.weight_kg, units), piece, one.note)
    parts = cells(tables.parts_table(BOATHOUSE, METRIC))
    for (name, material, volume), part in zip(parts, BOATHOUSE.parts, strict=True):
        assert (name, material) == (part.name.capitalize(), part.material)
        assert float(volume.removesuffix(" m³")) == pytest.approx(part.volume, abs=6e-4)
    levels = cells(tables.levels_table(BOATHOUSE))
    found = [to_si(level, "length") for _, level in levels]
    assert (
        found
        == sorted(found, reverse=True)
        == pytest.approx(sorted(BOATHOUSE.levels.values(), reverse=True), abs=1e-3)
    )
    assert ("Hearth", "1'-0\"") in levels
    assert cells(tables.draft_table(BOATHOUSE)) == draft_report.case_rows(BOATHOUSE)


def test_a_table_shows_every_word_of_every_cell():
    """Pandas cuts a cell after 50 letters, of ours it cuts none."""
    table = tables.findings_table(BOATHOUSE)
    for shown in (table.head(20), table[table["Verdict"] == "meets"].head(9)):
        longest = max(shown["Why"], key=len)
        assert len(longest) > 60 and longest in repr(shown[["Why"]])
        assert longest in html.unescape(shown._repr_html_())


def test_agreement_with_canada_cell_by_cell():
    """The middle of the first full band, 0.15 to 0.25 m2 and 3 to 4.5 m; its own open row at
    0.125 m2.
    """
    tight, wide = compare_with_canada(2.5), compare_with_canada(1.0)
    assert min(wide.opening) == 0.125 and wide.height[0] == pytest.approx(3.75)
    assert (tight.ours > wide.ours).all(), "more loss, a bigger flue"
    for k, row in enumerate(cells(tables.agreement_table())):
        opening, height, band, *pairs = row
        assert float(opening.removesuffix(" m²")) == pytest.approx(wide.opening[k], abs=6e-4)
        assert float(height.removesuffix(" m")) == pytest.approx(wide.height[k], abs=6e-3)
        low, high = map(float, band.split(" to "))
        assert (low, high) == pytest.approx((1000 * wide.least[k], 1000 * wide.most[k]), abs=0.5)
        for one, ours, off in ((wide, *pairs[:2]), (tight, *pairs[2:])):
            found = float(ours.removesuffix(" (outside)"))
            assert found == pytest.approx(1000 * one.ours[k], abs=0.5)
            assert ours.endswith("(outside)") == (not one.least[k] <= one.ours[k] <= one.most[k])
            middle = 500 * (one.least[k] + one.most[k])
            assert float(off.removesuffix(" %")) == pytest.approx(
                100 * (1000 * one.ours[k] / middle - 1), abs=0.06
            )


# -- the books -----------------------------------------------------------------------------------
def test_the_table_of_coverage_is_what_is_counted():
    said = [line.strip("| ").split(" | ") for line in books.coverage_table().splitlines()[2:]]
    frame = cells(tables.coverage_table())
    for (pack, computed, waits, gone, memory), row in zip(said, frame, strict=True):
        rules = [rule for rule in PACKS[pack].rules if not rule.outside]
        waiting = [r for r in rules if books.asked_keys(r)]
        assert (int(computed), int(waits)) == (len(rules) - len(waiting), len(waiting))
        assert int(memory) == sum(r.confidence == "memory" for r in PACKS[pack].rules)
        missing = gone.split(": ")[1].split(", ") if ": " in gone else []
        assert int(gone.split(":")[0]) == len(missing)
        assert row == (
            pack,
            int(computed),
            int(waits),
            len(missing),
            int(memory),
            ", ".join(missing),
        )
    assert {row[0] for row in frame} == set(PACKS)


def test_the_worst_answer_of_a_book_comes_first():
    order = ["falls short", "not checked", "meets"]
    for question in books.side_by_side(BOATHOUSE.design):
        for one in question.answers:
            places = [order.index(f.verdict) for f in one.findings]
            assert places == sorted(places)
    chosen = books.side_by_side(BOATHOUSE.design, {"us": "US IRC 2015"})
    assert {q.answers[0].pack for q in chosen} == {"US IRC 2015"}


def test_a_module_that_writes_a_page_writes_it_only_when_asked(capsys):
    for name in ("books", "nomenclature"):
        for run_as in ("another", "__main__"):
            assert capsys.readouterr().out == ""
            with warnings.catch_warnings(action="ignore"):
                runpy.run_module(f"fireplace_calc.report.{name}", None, run_as, alter_sys=True)
        assert "| US IRC 2021 | " in capsys.readouterr().out


# -- files ---------------------------------------------------------------------------------------
def test_the_csv_files_hold_every_figure(tmp_path):
    order, checks, air = write_csv(BOATHOUSE, tmp_path)
    assert [path.name for path in (order, checks, air)] == [
        "takeoff.csv",
        "findings.csv",
        "draft.csv",
    ]
    with order.open(newline="", encoding="utf-8") as file:
        head, *lines = csv.reader(file)
    assert head == [*TAKEOFF_COLUMNS, "made_by"]
    for line, row in zip(lines, BOATHOUSE.takeoff, strict=True):
        words = (row.item, row.material, row.unit, row.note, made_by())
        assert (line[0], line[1], line[4], line[8], line[9]) == words
        figures = (row.net, row.order, row.weight_kg, row.piece_kg, row.volume)
        found = [float(line[k]) if line[k] else None for k in (2, 3, 5, 6, 7)]
        assert found == [None if v is None else v for v in figures]
    for path, findings in ((checks, BOATHOUSE.findings), (air, BOATHOUSE.judgement)):
        with path.open(newline="", encoding="utf-8") as file:
            head, *lines = csv.reader(file)
        assert head == [*FINDING_COLUMNS, "made_by"]
        for line, one in zip(lines, findings, strict=True):
            wanted = [getattr(one, name) for name in FINDING_COLUMNS]
            wanted[-2:] = [" ".join(one.assumed), " ".join(one.missing)]
            assert line == ["" if v is None else str(harmless(v)) for v in wanted] + [made_by()]


def test_a_text_that_starts_like_a_formula_gets_a_quote():
    assert [harmless(v) for v in ("=1", "+1", "-1", "@a", "a=1", "", -1.0, None)] == [
        "'=1", "'+1", "'-1", "'@a", "a=1", "", -1.0, None
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"name": "Cabin"}, "Name Cabin"),
        ({"note": "Ask the roofer"}, "Note"),
        ({"name": "Cabin", "note": "Ask"}, "Name Cabin, Note"),
        ({"name": "Cabin", "opening.width": "42 in"}, "Name Cabin, Opening width 3'-6\""),
        ({"note": "Ask", "opening.width": "42 in"}, "Opening width 3'-6\", Note"),
        (
            {"name": "Cabin", "note": "Ask", "opening.width": "42 in"},
            "Name Cabin, Opening width 3'-6\" and 1 more",
        ),
        ({"name": "C" * 90}, "Name " + "C" * 90),
        ({"name": "C" * 95}, "Name " + "C" * 95),
        ({"name": "C" * 96}, "Name " + "C" * 92 + "..."),
    ],
)
def test_a_step_is_named_by_what_was_done(changes, words):
    """The name first, the note last, two of all named, and no more than a hundred letters."""
    assert step_words(Design(), change(Design(), changes), "feet-inches") == words


def test_a_first_hour_says_when_the_flue_draws():
    """Eight fires with figures that tell themselves apart: face by minute and fire, liner likewise."""
    times = np.array([15.0, 60.0, 600.0, 3600.0])
    up = np.zeros((4, 8), bool)
    up[-1, 3] = True
    face = 0.1 * np.arange(1, 5)[:, None] + 0.01 * np.arange(8)
    hour = SimpleNamespace(
        times=times,
        established=np.array([0.0, 15.0, 15.1, np.inf, np.inf, 90.0, 600.0, 3600.0]),
        up=up,
        face=face,
        liner=273.15 + 100 * np.arange(4)[:, None] + np.arange(8),
    )
    rows = draft_report.first_hour_rows(SimpleNamespace(first_hour=hour), METRIC)
    assert [row[1] for row in rows] == [
        *("at once", "at once", "after 0.3 min", "not in the first hour"),
        *("not at all: air comes down", "after 1.5 min", "after 10.0 min", "after 60.0 min"),
    ]
    assert [row[0].split(", ")[0] for row in rows] == ["winter"] * 4 + ["mild"] * 4
    assert rows[0][0] == rows[4][0].replace("mild", "winter") == "winter, as it stands"
    for k, row in enumerate(rows):
        read = [float(text.removesuffix(" m/s")) for text in row[2:5]]
        assert read == pytest.approx(face[1:, k], abs=0.006)
        warm = [273.15 + float(text.removesuffix(" °C")) for text in row[5:]]
        assert warm == pytest.approx(hour.liner[2:, k], abs=0.6)


@pytest.mark.parametrize("unit", ["psi", "psf"])
def test_stress_is_told_in_the_readers_units(unit):
    """Against pint, within the three digits that are printed."""
    found = [f for f in assess(load(example("boathouse-laid"))).findings if f.unit == unit]
    told = [(f, compared(f, MILLIMETRES)) for f in found if isinstance(f.provided, float)]
    assert told
    for finding, (provided, *_) in told:
        number, name = provided.split()
        pascals = pint.Quantity(finding.provided, unit.replace("psf", "lbf/ft**2")).to(name)
        assert name in ("kPa", "MPa")
        assert float(number) == pytest.approx(pascals.magnitude, rel=6e-3) and float(number) < 1000
        assert compared(finding)[0].endswith(f" {unit}")


def test_notes_of_the_structure_name_lengths_both_ways():
    """A mason's tape and a metric one: nobody is left with the other's."""
    for remark in assess(load(example("boathouse-laid"))).structure.remarks:
        for length in re.finditer(r"(?:\d+'-)?[\d /]*\d\"", remark):
            assert re.match(r" \([\d ]+ mm\)", remark[length.end() :]), remark


@pytest.mark.parametrize(
    ("serves", "fuel", "pack", "gas", "size"),
    [
        ("appliance", "gas", "US IRC 2021", True, False),
        ("appliance", "oil", "US IRC 2021", False, False),
        ("appliance", None, "US IRC 2021", False, False),
        ("fireplace", "gas", "US IRC 2021", False, False),
        ("appliance", "gas", "Canada NBC", True, True),
        ("fireplace", None, "UK ADJ", False, True),
        ("none", None, "UK ADJ", False, False),
    ],
)
def test_a_second_flue_says_how_far_it_is_checked(serves, fuel, pack, gas, size):
    """Gas goes by a code of its own; its own size is in the American books alone."""
    design = change(Design(), {"second_flue.serves": serves, "second_flue.fuel": fuel})
    told = summary(assess(design, pack), width=10**4)
    assert ("Not covered  gas:" in told) == gas
    assert ("Not covered  the second flue's own size" in told) == size
    assert ("Second flue  of " in told) == (serves != "none")
    assert ("of a heating appliance" in told) == (serves == "appliance")
    assert ("of another fireplace" in told) == (serves == "fireplace")
    assert ("Second flue" in told) == (serves != "none")
