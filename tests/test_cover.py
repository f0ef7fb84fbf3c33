"""The cover: counts that agree with the assessment, lists that are never cut short in silence, a
list of sheets that is true.
"""

import re

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sampled import sampled
from strategies import designs

from fireplace_calc import PACKS, Design, assess, change, load
from fireplace_calc.base.printing import show
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.drawing.cover_sheet import cover_words
from fireplace_calc.drawing.plates import whole_set
from fireplace_calc.drawing.plates.figure import Plate
from fireplace_calc.drawing.plates.marked_figures import MARKED
from fireplace_calc.drawing.plates.sizes import PAPERS, paper
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Sheet
from fireplace_calc.editing.assumptions import tell_everything
from fireplace_calc.report.assumed_inputs import assumptions
from fireplace_calc.report.for_client.fallen_short import short_words, shortfall
from fireplace_calc.report.for_client.ten_lines import to_be_built
from fireplace_calc.rules.comparing import NOT_CHECKED

FEET, METRIC = "feet-inches", "millimetres"
SHIPPED = {path.stem: load(path) for path in sorted(DESIGNS.glob("*.toml"))}
MAKERS = ("cover_sheet.cover", "checks.inspector")
CASES = [(name, pack) for name in SHIPPED for pack in PACKS]
CASES.sort(key=lambda case: case[1] not in ("US IRC 2021", "Germany since 2022"))


def cover(result, units=FEET, size="A3", makers=MAKERS):
    """Sheets of the cover, dressed, and all their words in a row."""
    made = whole_set.sheets(result, units, size, makers=makers)
    mine = [sheet for name, sheet in made if name in ("Cover", "What is to be built")]
    return mine, " ".join(label.text for sheet in mine for label in sheet.labels)


def after(words, heading):
    """What stands under a heading, to the next one."""
    return re.split(
        r" (?:FALLS SHORT|NOT CHECKED|ASSUMED|SHEETS, and|CAUTIONS)\b", words.split(heading)[1]
    )[0]


PAPERED = [(FEET, "A3"), (METRIC, "A3"), (FEET, "11x17")]


@pytest.mark.parametrize(
    ("name", "pack", "papers"),
    sampled([(*case, PAPERED if n < 6 else [PAPERED[n % 3]]) for n, case in enumerate(CASES)], 6),
)
def test_the_cover_is_one_clean_sheet_and_counts_as_the_assessment_does(name, pack, papers):
    """On three papers, of most books on one of them in turn."""
    result = assess(SHIPPED[name], pack)
    for units, size in papers:
        (sheet,), words = cover(result, units, size)
        assert not collisions(sheet, 0.7)
        short = shortfall(result)
        assert short.headline in words
        assert all(f"{part} {said}" in words for part, said in to_be_built(result, units))
        reach = PACKS[pack].reach
        assert reach in words and f"Checked against {pack}." in words
        shown = [f for f in short.all if short_words(f, units)[1:] in words]
        more = re.search(r"and (\d+) more", after(words, "FALLS SHORT"))
        assert len(shown) + (int(more[1]) if more else 0) == len(short.all)
        judged = (*result.judgement, *result.structure.findings)
        open_ = [f for f in (*result.findings, *judged) if f.verdict == NOT_CHECKED]
        listed = after(words, "NOT CHECKED")
        named = listed.partition("somebody has to look")[2].split(";")
        more = re.search(r"and (\d+) more", listed)
        assert len(named) - bool(more) + (int(more[1]) if more else 0) == max(len(open_), 1)
        assert f"{len(assumptions(result, units))} inputs that nobody has entered" in words


@pytest.mark.parametrize("size", PAPERS)
@pytest.mark.parametrize("name", ["Hut", "W" * 400, "A very long name of a very small hut " * 12])
def test_names_of_any_length_stay_on_the_cover(size, name):
    called = ("name", "site.place", "job.client", "job.drawn", "job.checked")
    result = assess(change(SHIPPED["boathouse-laid"], dict.fromkeys(called, name)))
    made, _ = cover(result, size=size)
    for sheet in made:
        assert not collisions(sheet, 0.7)


def test_the_names_of_the_job_stand_on_it():
    told = {"job.client": "A. Client", "job.drawn": "Oak Hearths", "job.checked": "N. Body"}
    _, words = cover(assess(change(SHIPPED["plain"], told)))
    assert "For A. Client, drawn by Oak Hearths, checked by N. Body" in words
    for name in told.values():
        assert words.count(name) == 2  # and in the title block


def test_nothing_assumed_and_nothing_open_are_said(monkeypatch):
    result = assess(tell_everything(SHIPPED["boathouse"]))
    _, words = cover(result)
    assert "ASSUMED: 0 inputs" in words and after(words, "ASSUMED").endswith("Nothing.")


@pytest.mark.parametrize("size", PAPERS)
def test_the_list_of_sheets_is_true(size, monkeypatch):
    """Each sheet under the number that its title block has, with the marks of its figures; several
    of one name together; "and 12 more" names the sheet on which they stand.
    """
    import fireplace_calc.drawing.checks.inspector as maker

    real = maker.plates

    def more(result, units, on, prices=None):
        empty = (
            Plate("Front and section", Sheet(on.width, on.height), figures=["front", "section"]),
        )
        return [*empty, *real(result, units, on, prices)]

    monkeypatch.setattr(maker, "plates", more)
    result = assess(SHIPPED["plain"])
    made = whole_set.sheets(result, FEET, size, makers=MAKERS)
    _, words = cover(result, size=size)
    names = [name for name, _ in made]
    drawn, page = names.index("Front and section") + 1, names.index("Inspector's page") + 1
    marks = ", ".join(MARKED[key][0] for key in ("front", "section"))
    assert f" {drawn} Front and section {marks} " in words
    last = max(n for n, name in enumerate(names, 1) if name == "Inspector's page")
    span = {0: f"{page}", 1: f"{page}, {last}"}.get(last - page, f"{page} to {last}")
    assert f" {span} Inspector's page " in words
    assert re.search(rf"and \d+ more, sheets? {page}\b", after(words, "NOT CHECKED"))
    for n, (_, sheet) in enumerate(made, 1):
        assert f"{n} of {len(made)}" in {label.text for label in sheet.labels}


@settings(max_examples=10, deadline=None, suppress_health_check=list(HealthCheck))
@given(designs(), st.sampled_from(list(PACKS)), st.sampled_from(list(PAPERS)))
def test_random_covers_are_clean(design, pack, size):
    result = assess(design, pack)
    for units in (FEET, METRIC):
        made, words = cover(result, units, size)
        assert len(made) == (1 if paper(units, size).width > 400 else 2)
        for sheet in made:
            assert not collisions(sheet, 0.7)
        assert "None" not in words


def test_ten_lines_tell_the_design():
    """By hand, the plain fireplace as its defaults have it: 36 by 30 in, 20 in deep, footing 12 in
    thick under 6 ft of masonry and 6 in of projection.
    """
    said = dict(to_be_built(assess(Design())))
    assert len(said) == 10
    assert said["Opening"].startswith("3'-0\" wide, 2'-6\" high")
    assert "1'-8\" deep" in said["Firebox"] and "1'-0\" thick" in said["Footing and base"]
    arched = assess(change(Design(), {"opening.head": "segmental", "opening.rise": "4 in"}))
    assert 'arch rising 4"' in dict(to_be_built(arched))["Opening"]
    hooded = assess(change(Design(), {"opening.hood": "6 in"}))
    assert 'under a hood of 6"' in dict(to_be_built(hooded))["Opening"]


TRIM = {"name": "board", "place": "above"}


@pytest.mark.parametrize(
    ("changes", "line", "has", "has_not"),
    [
        ({}, "Opening", "straight head on ", "arch"),
        ({}, "Opening", "hearth at the floor.", "over the floor"),
        ({"base.hearth_level": "12 in"}, "Opening", "hearth 1'-0\" over the floor.", "at the floor"),
        ({"lintel.material": None}, "Opening", "straight head on a lintel", "steel"),
        ({}, "Firebox", "laid, ", "sections"),
        ({"method": "modular", "firebox.lining": "refractory section"}, "Firebox",
         "set in sections, ", "laid"),
        ({"firebox.lining": None}, "Firebox", "no lining told", "firebrick"),
        ({}, "Hearth extension", " in front, ", "none"),
        ({"hearth.front": "0 in"}, "Hearth extension", "none in front", "beside"),
        ({"mantel.family": "piece by piece", "surround.trim": []}, "Face", "; no mantel.", "of"),
        ({"mantel.family": "piece by piece", "surround.trim": [TRIM]}, "Face",
         "; mantel and trim of 1 piece.", "no mantel"),
        ({"mantel.family": "piece by piece", "surround.trim": [TRIM, TRIM]}, "Face",
         "; mantel and trim of 2 pieces.", "no mantel"),
        ({"mantel.family": "shelf"}, "Face", "; mantel: shelf.", "trim"),
        ({"throat.damper": None}, "Throat", "no damper told", "damper at"),
        ({"throat.damper": "flue top"}, "Throat", "damper at the flue top", "no damper"),
        ({"smoke_chamber.construction": None}, "Smoke chamber", "how built, not said", "lining not"),
        ({"smoke_chamber.lining": None}, "Smoke chamber", "lining not said", "how built"),
        ({}, "Flue", " inside, 1/", "second flue"),
        ({"second_flue.serves": "appliance"}, "Flue", "a second flue beside it for appliance", "none"),
        ({}, "Chimney", " over the roof.", "None"),
        ({}, "In all", "footing included; materials ", "None"),
    ],
)  # fmt: skip
def test_a_line_says_what_there_is(changes, line, has, has_not):
    said = dict(to_be_built(assess(change(Design(), changes))))[line]
    assert has in said and has_not not in said, said


def test_a_footing_is_as_wide_and_as_deep_as_its_projection_makes_it():
    result = assess(Design())
    f, out = result.geometry.frame, result.design.base.footing_projection
    wide, deep = (show(v, "length") for v in (2 * (f.block_half + out), f.block_back + 2 * out))
    assert f"concrete {wide} by {deep}, " in dict(to_be_built(result))["Footing and base"]
    assert (
        f"{show(2 * f.stack_half, 'length')} by {show(2 * f.stack_depth, 'length')};"
        in (dict(to_be_built(result))["Chimney"])
    )


def test_marks_are_listed_in_their_order():
    """On paper they stand as they found room; in the list somebody looks for one."""
    made = whole_set.sheets(
        assess(SHIPPED["boathouse"]), FEET, "A3", makers=("cover_sheet.cover", "details.sheet")
    )
    rows = " ".join(label.text for label in made[0][1].labels)
    assert "3, 4, 5, 6, 7, 8, 9" in rows


def test_how_many_more_there_are_is_counted(monkeypatch):
    monkeypatch.setattr(cover_words, "words", lambda said, wide: [said])
    three = ["one", "two", "three"]
    assert cover_words.first_of(three, 2, 100.0, "4", True) == ["One", "Two", "and 1 more, sheet 4"]
    assert cover_words.first_of(three, 3, 100.0, "4", False) == ["One; Two; Three."]
    assert cover_words.first_of(three, 1, 100.0, "4 and 5", False) == [
        "One; and 2 more, sheets 4 and 5."
    ]


def test_checks_that_stand_on_what_was_assumed_are_all_counted():
    result = assess(SHIPPED["plain"])
    *_, (said, _, _, _) = cover_words.found_lists(result, FEET, (), 2)
    assert len(result.assumed) != sum(result.assumed.values())
    assert f"; {sum(result.assumed.values())} checks pass" in said
