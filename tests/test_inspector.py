"""The inspector's page: all that applies once, how each figure is known, one sheet, lines to sign."""

from collections import Counter
from types import SimpleNamespace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sampled import sampled
from strategies import designs

from fireplace_calc import PACKS, Design, assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.drawing.checks import found_rows
from fireplace_calc.drawing.checks.back_page import behind as back
from fireplace_calc.drawing.checks.found_rows import Fullness, short_clause
from fireplace_calc.drawing.checks.front_page import HOLD_POINTS, front
from fireplace_calc.drawing.checks.inspector import BACK
from fireplace_calc.drawing.checks.sections import OTHER, by_section, section_of
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.plates.bands import Bands, Together, lowest, split
from fireplace_calc.drawing.plates.sizes import paper
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell
from fireplace_calc.editing.assumptions import assumed, tell_everything
from fireplace_calc.explore.worked_figures import work_figures
from fireplace_calc.report import draft_report
from fireplace_calc.report.assumed_inputs import assumptions
from fireplace_calc.report.sentences import asked, compared
from fireplace_calc.rules.comparing import DOES_NOT_APPLY, FALLS_SHORT, MEETS, NOT_CHECKED
from fireplace_calc.rules.tracing.known import (
    ASSUMED,
    DRAWN,
    MEANING,
    TAPED,
    TOLD,
    UNKNOWN,
    known_facts,
    known_judgement,
)

FEET, METRIC = "feet-inches", "millimetres"
MINE = ("checks.inspector",)
SHIPPED = {path.stem: load(path) for path in sorted(DESIGNS.glob("*.toml"))}
CASES = [(name, pack) for name in SHIPPED for pack in PACKS]
CASES.sort(key=lambda case: case[1] not in ("US IRC 2021", "UK ADJ"))


def known(result):
    return known_facts(result.facts, PACKS[result.pack], result.findings)


def rows_of(sheets):
    """Words of the last column of findings, and all other words, as they stand on the sheets."""
    texts = [label.text for sheet in sheets for label in sheet.labels]
    return Counter(texts), " ".join(texts)


def flattened(text):
    """Without blanks: a word that is too long for its column is broken."""
    return text.replace(" ", "")


def ink(sheet):
    """Share of the 20 mm squares in which something is written or drawn."""
    squares = set()
    for x0, y0, x1, y1 in (label.extent for label in sheet.labels):
        squares |= {
            (i, k)
            for i in range(int(x0 // 20), int(x1 // 20) + 1)
            for k in range(int(y0 // 20), int(y1 // 20) + 1)
        }
    return len(squares) / (int(sheet.width / 20 + 0.5) * int(sheet.height / 20 + 0.5))


PAPERED = [(FEET, "A3"), (METRIC, "A3"), (FEET, "11x17")]


@pytest.mark.parametrize(
    ("name", "pack", "papers"),
    sampled([(*case, PAPERED if n < 6 else [PAPERED[n % 3]]) for n, case in enumerate(CASES)], 6),
)
def test_every_book_and_example_is_one_clean_sheet(name, pack, papers):
    """A3 in both systems, 11x17 in feet and inches, of most books one of them in turn: everything
    that applies, once, above lines to sign.
    """
    result = assess(SHIPPED[name], pack)
    applies = [f for f in result.findings if f.verdict != DOES_NOT_APPLY]
    for units, size in papers:
        (sheet,) = front(result, units, paper(units, size))
        (_, dressed), *behind = whole_set.sheets(result, units, size, makers=MINE)
        assert behind and behind[0][0] == BACK
        for sheet_ in (dressed, *(made for _, made in behind)):
            assert not collisions(sheet_, 0.7), (units, size)
            assert sheet_ is dressed or ink(sheet_) >= 0.5
        assert len(applies) < 20 or ink(dressed) >= 0.5
        counted, words = rows_of([sheet])
        flat = flattened(words)
        for finding in applies:
            named = {f"{c} {finding.title}" for c in (finding.clause, short_clause(finding))}
            alike = sum(
                f.title.startswith(finding.title) for f in applies if f.clause == finding.clause
            )
            assert alike >= sum(flat.count(flattened(n)) for n in named) >= 1, finding.title
        assert all(counted[point] == 1 for point in HOLD_POINTS)
        listed = {word: n for word, n in Counter(known(result).values()).items()}
        for word in (TAPED, ASSUMED, TOLD, DRAWN):
            assert counted[word] + words.count(f", {word};") >= listed.get(word, 0), word
        short = [f for f in applies if f.verdict in (FALLS_SHORT, NOT_CHECKED)]
        met = [label.y for label in sheet.labels if label.text.startswith("MEETS")]
        if len(short) < 20 and met:  # what wants somebody's eye stands above the middle
            assert max(met) > sheet.height / 2


@pytest.mark.parametrize("size", ["letter", "A4"])
def test_small_paper_takes_more_sheets(size):
    result = assess(SHIPPED["boathouse"])
    made = whole_set.sheets(result, FEET, size, makers=MINE)
    assert len(made) > 2
    for _, sheet in made:
        assert not collisions(sheet, 0.7)
    counted, words = rows_of([sheet for _, sheet in made])
    for finding in result.findings:
        keyed = words.count(f"({finding.key})")
        assert keyed == (finding.verdict != DOES_NOT_APPLY), finding.key
    assert all(counted[point] == 1 for point in HOLD_POINTS)


@pytest.mark.parametrize("pack", PACKS)
def test_every_clause_has_its_section(pack):
    """By hand, from the books' own numbering; ten comes after nine."""
    rules = [rule for rule in PACKS[pack].rules if not rule.outside]
    assert not [rule.clause for rule in rules if section_of(rule.clause) == OTHER]
    found = by_section(assess(Design(), pack).findings)
    assert sum(map(len, found.values())) == len(assess(Design(), pack).findings)
    if pack == "US IRC 2021":
        assert list(found)[:3] == [
            "R1001 Masonry fireplaces",
            "R1003 Masonry chimneys",
            "R1006 Outdoor air",
        ]
        clauses = [f.clause for f in found["R1001 Masonry fireplaces"]]
        assert clauses.index("R1001.9.2") < clauses.index("R1001.10")


@settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
@given(designs(), st.sampled_from(list(PACKS)))
def test_how_a_figure_is_known_agrees_with_what_was_entered(design, pack):
    """Assumed is what rests on an input that nobody entered; entered, it is so no more."""
    result = assess(design, pack)
    found = known(result)
    assert found.keys() == {f.key for f in result.findings if f.verdict != DOES_NOT_APPLY}
    for finding in result.findings:
        word = found.get(finding.key)
        if word is None:
            continue
        assert word in MEANING
        open_ = finding.verdict == NOT_CHECKED
        assert (word == UNKNOWN) == (open_ and finding.provided is None)
        assert open_ or (word == ASSUMED) == bool(set(finding.assumed) & assumed(design))
        assert word != TAPED
    told = assess(tell_everything(design), pack)
    assert ASSUMED not in known(told).values()


MEASURED = {
    "measured.flue_area": ("110 in2", "FLU-10", "FLU-11", "FLU-12"),
    "measured.hearth_thickness": ("6 in", "HTH-02"),
    "measured.chamber_slope": ("25 deg", "SMK-05", "SMK-06"),
    "measured.over_contact": ("4 ft", "ROF-01"),
    "measured.over_nearby": ("4 ft", "ROF-02"),
    "measured.liner_slope": ("10 deg", "FLU-06"),
}


@pytest.mark.parametrize("key", MEASURED)
@pytest.mark.parametrize("name", SHIPPED)
def test_what_a_tape_has_found_is_measured(name, key):
    """The same checks on the drawing alone are not, whoever else has been told what."""
    value, *keys = MEASURED[key]
    before, after = (
        known(assess(tell_everything(change(SHIPPED[name], changes))))
        for changes in ({key: None}, {"measured.flue_area": None, key: value})
    )
    tried = [check for check in keys if check in before and check in after]
    assert tried
    for check in tried:
        assert before[check] != TAPED and after[check] == TAPED
    assert {k for k in after if after[k] == TAPED} <= set(keys) | {"SMK-07", "THR-03"}


def test_a_word_is_told_and_a_size_is_drawn():
    """By hand: no drawing shows a mortar's standard or a frost line; every drawing shows a depth."""
    found = known(assess(tell_everything(SHIPPED["boathouse"])))
    for key in ("FBX-05", "FBX-11", "FND-11", "CLR-09", "THR-08", "FND-16", "AIR-07"):
        assert found[key] == TOLD, key
    for key in ("FBX-09", "HTH-07", "CLR-02", "FND-01", "ROF-01", "CHM-07"):
        assert found[key] == DRAWN, key
    assert found["FLU-10"] == TAPED  # as its file says
    assert known(assess(SHIPPED["boathouse"], "UK ADJ"))["UK-005"] == TAPED  # reads it directly


def test_bands_hold_all_blocks_and_break_none():
    seen = []
    blocks = [
        Together(high, lambda sheet, x, y, n=n: seen.append((n, id(sheet), x, y)), leads=n % 5 == 0)
        for n, high in enumerate([12.0, 5.0, 30.0, 7.0, 9.0] * 20)
    ]
    bands = Bands(paper(FEET, "letter"))
    bands.band(blocks, 2)
    assert [n for n, *_ in seen] == list(range(100))
    assert len(bands.sheets) == len({sheet for _, sheet, _, _ in seen}) > 1
    bottom = bands.cell.bottom
    assert all(y - blocks[n].high >= bottom - 1e-6 for n, _, _, y in seen)
    leads = [k for k, (n, *_) in enumerate(seen) if blocks[n].leads]
    assert all(seen[k][1:3] == seen[k + 1][1:3] for k in leads)  # never last in a column
    assert lowest(blocks[:3], 2, 10.0) is None
    assert split(blocks[:3], 2, 30.0)[1] == []
    tall = Bands(paper(FEET, "letter"))
    tall.band([Together(900.0, lambda sheet, x, y: None)] * 3)
    assert len(tall.sheets) == 3


@pytest.mark.parametrize("name", ["W" * 400, "A very long name of a very small hut " * 12])
def test_names_of_any_length_stay_on_the_sheet(name):
    called = ("name", "site.place", "job.client", "job.drawn", "job.checked")
    result = assess(change(SHIPPED["boathouse"], dict.fromkeys(called, name)))
    for _, sheet in whole_set.sheets(result, FEET, "A3", makers=MINE):
        assert not collisions(sheet, 0.7)


@settings(max_examples=10, deadline=None, suppress_health_check=list(HealthCheck))
@given(designs(), st.sampled_from(list(PACKS)), st.sampled_from(["A3", "11x17", "letter", "A4"]))
def test_random_designs_are_clean(design, pack, size):
    result = assess(design, pack)
    for units in (FEET, METRIC):
        for _, sheet in whole_set.sheets(result, units, size, makers=MINE):
            assert not collisions(sheet, 0.7)


@pytest.mark.parametrize("size", ["A3", "letter"])
@pytest.mark.parametrize("name", SHIPPED)
def test_the_back_loses_nothing(name, size):
    """Every judgement that applies once, every formula, every assumption, every opinion and every
    way to light the first fire.
    """
    result = assess(SHIPPED[name])
    made = back(result, FEET, paper(FEET, size))
    assert size != "A3" or len(made) == (2 if name == "plain" else 1)
    _, words = rows_of(made)
    flat = flattened(words)
    judged = (*result.judgement, *result.structure.findings)
    for finding in judged:
        alike = [f for f in judged if f.title.startswith(finding.title)]
        names = {f"{c} {finding.title}" for c in (finding.clause, short_clause(finding))}
        count = sum(flat.count(flattened(n)) for n in names)
        assert (count > 0) == (finding.verdict != DOES_NOT_APPLY), finding.title
        assert count <= len(alike)
    for one in work_figures(result, FEET):
        for part in (one.name, one.formula, one.numbers, one.result, one.source[1:]):
            assert flattened(part) in flat, part
    for one in assumptions(result, FEET):
        assert flattened(f"{one.label} {one.value}") in flat, one
    rows = [*draft_report.opinion_rows(result, FEET), *draft_report.first_hour_rows(result, FEET)]
    for texts in rows:
        assert flattened(" ".join(texts[:4])) in flat
    for said in (draft_report.FIRST_FIRE, draft_report.likely(result, FEET)):
        assert flattened(said) in flat
    for said in (*result.structure.remarks, *result.structure.engineer):
        assert flattened(said) in flat


def test_who_is_sent_for_an_engineer_reads_why():
    """A tall thin stack with a told wind; the reasons are the assessment's own."""
    changes = {"flue.sections": 40, "site.wind": "60 m/s", "chimney.wall": "4 in"}
    result = assess(change(SHIPPED["plain"], changes))
    assert result.structure.engineer
    _, words = rows_of(back(result, FEET, paper(FEET, "A3")))
    for reason in result.structure.engineer:
        assert flattened(f"Call an engineer. {reason}") in flattened(words)


@settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))
@given(designs(), st.sampled_from(list(PACKS)))
def test_whatever_applies_stands_on_the_sheets_once(design, pack):
    """Code, draft and structure, by their keys; how each is known stands in its row."""
    result = assess(design, pack)
    made = whole_set.sheets(result, FEET, "letter", makers=MINE)
    labels = [label for _, sheet in made for label in sheet.labels]
    texts = flattened(" ".join(label.text for label in labels))
    ways = known(result) | {
        f.key: known_judgement(f) for f in (*result.judgement, *result.structure.findings)
    }
    for finding in (*result.findings, *result.judgement, *result.structure.findings):
        applies = finding.verdict != DOES_NOT_APPLY
        name = flattened(f"{finding.title} ({finding.key})")
        assert texts.count(name) == applies, finding.key
        if applies:
            row = texts.partition(name)[2]
            there = compared(finding, FEET)[0] or ("" if finding.verdict == MEETS else UNKNOWN)
            said = flattened(f"{there}{asked(finding, FEET)}{ways[finding.key]}")
            assert row.startswith(said), (finding.key, said, row[:80])


def short_of_room(monkeypatch, finding, **less):
    """Texts of a row and what stands under it."""
    told = {}

    def kept(columns, texts, wide, **more):
        told["texts"], told["under"] = [*texts], more["under"]
        return []

    monkeypatch.setattr(found_rows, "row", kept)
    found_rows.found_row(finding, "told", "feet-inches", 200.0, Fullness(**less))
    return told


def test_what_falls_short_says_why_while_there_is_room(monkeypatch):
    finding = next(
        f for f in assess(SHIPPED["boathouse"]).findings if f.verdict == FALLS_SHORT and f.why
    )
    why = finding.why[:1].upper() + finding.why[1:]
    assert why in short_of_room(monkeypatch, finding)["under"]
    assert why not in short_of_room(monkeypatch, finding, why=False)["under"]


@pytest.mark.parametrize(("verdict", "counted"), [(MEETS, True), (FALLS_SHORT, False)])
def test_allowed_words_are_only_counted_where_one_of_them_is_met(monkeypatch, verdict, counted):
    """Whoever has to mend it reads every word that is allowed."""
    finding = assess(SHIPPED["boathouse"]).findings[0]
    words = "one long word or another long word or a third long word"
    finding = finding._replace(verdict=verdict, provided="none", required=words, unit="word")
    texts = short_of_room(monkeypatch, finding, allowed=False)["texts"]
    assert ("one of 3 allowed" in texts) == counted
    assert (words in texts) != counted


@pytest.mark.parametrize(
    ("verdict", "provided", "assumed", "word"),
    [
        (NOT_CHECKED, None, True, "not known"),
        (MEETS, 1.0, True, "assumed"),
        (NOT_CHECKED, 1.0, True, "assumed"),
        (MEETS, 1.0, False, "worked out"),
    ],
)
def test_how_a_judgement_is_known(verdict, provided, assumed, word):
    found = SimpleNamespace(verdict=verdict, provided=provided, assumed=assumed)
    assert known_judgement(found) == word


def test_what_fits_no_sheet_is_put_on_one_all_the_same():
    """20 mm for words, and rows of 15: one a sheet, and no sheet is left empty for want of more."""
    on = paper("feet-inches", "letter")
    low = Cell(on.field.left, on.field.top - 20.0, on.field.right, on.field.top)
    made, begun = Bands(on, low), Bands.begin
    put = []
    rows = [Together(15.0, lambda sheet, x, y: put.append((x, y))) for _ in range(4)]

    def begin():
        assert len(made.sheets) < 9, "sheets are begun without end"
        begun(made)

    made.begin = begin
    made.band(rows)
    assert len(made.sheets) == 4 and put == [(low.left, low.top)] * 4
