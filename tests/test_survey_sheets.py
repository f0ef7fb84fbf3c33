"""The sheets of a survey: clean on every paper, every arrow numbered, every entry with its lines."""

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from sampled import sampled
from test_survey import BRICK, filled, words

from fireplace_calc.base.units import SYSTEMS, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.survey.as_measured import (
    measured_sheets,
    measured_view,
    print_measured,
)
from fireplace_calc.drawing.survey.entry_rows import blanks_of
from fireplace_calc.drawing.survey.invented import sketched
from fireplace_calc.drawing.survey.numbered import SPANS, arrow_sketch, number_of
from fireplace_calc.drawing.survey.rings import clipped
from fireplace_calc.drawing.survey.sketch_lines import SKETCHES
from fireplace_calc.drawing.survey.survey_words import gaps
from fireplace_calc.drawing.survey.to_take_along import (
    PAPER_SIZES,
    SHOWN,
    print_survey,
    survey_sheets,
)
from fireplace_calc.editing.changes import change
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.jupyter.command import main
from fireplace_calc.jupyter.survey_command import PAPERS
from fireplace_calc.survey.asked.entry import STATIONS, reads_number
from fireplace_calc.survey.asked.walk import BY_KEY, NUMBER, WALK
from fireplace_calc.survey.from_survey import surveyed
from fireplace_calc.survey.kept import Survey, survey_text
from fireplace_calc.survey.unseen import CAUTIONS, UNSEEN


def texts(sheets):
    return [label.text for sheet in sheets for label in sheet.labels]


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("paper", PAPER_SIZES)
def test_the_blank_sheets_are_clean_and_whole(paper, units):
    sheets = survey_sheets(paper, units)
    assert [found for sheet in sheets for found in collisions(sheet)] == []
    assert {(sheet.width, sheet.height) for sheet in sheets} == {PAPER_SIZES[paper]}
    told = Counter(texts(sheets))
    for entry in WALK:
        assert (
            told[entry.spec.label]
            + sum(told[f"{entry.spec.label}  [{s.letter}]"] for s in SKETCHES.values())
            == 1
        ), entry.key
    flat = " ".join(texts(sheets))
    for line in (*(one.what for one in UNSEEN), *CAUTIONS):
        assert line.split(".")[0].split(",")[0][:25] in flat
    assert ("mm" in told) == (units == "millimetres") and ("ft, in" in told) == (
        units != "millimetres"
    )


@pytest.mark.parametrize("station", STATIONS)
def test_every_arrow_has_its_number_on_its_station(station):
    """Of each entry with an arrow the sketch is among those of its station."""
    entries = [e for e in WALK if e.station == station]
    for name in SHOWN.get(station, ()):
        sheet = Sheet(140.0, 195.0)
        arrow_sketch(sheet, Cell(2.0, 2.0, 138.0, 193.0), name, sketched(), entries)
        assert collisions(sheet) == []
        told = Counter(texts([sheet]))
        for entry in entries:
            for where, hold in SPANS.get(entry.key, ()):
                assert where in SHOWN[station], entry.key
                spans = hold(sketched())
                if where != name or entry.key == "arch rise":  # the lintel sketched is straight
                    continue
                numbers = [
                    number_of(entry, entry.readings[n] if len(spans) > 1 else "")
                    for n in range(len(spans))
                ]
                assert all(told[number] == 1 for number in numbers), (entry.key, numbers)


def test_what_a_tape_reads_has_an_arrow_or_says_where():
    """Lengths without an arrow are those that no sketch of this scale can show, or of the room."""
    bare = {e.key for e in WALK if reads_number(e.spec) and e.key not in SPANS}
    assert bare == {
        *("firebrick joint", "lintel thickness", "room length", "room width", "corbel step"),
        *("cricket height", "air in front", "fireblock depth"),
    }
    assert set(SPANS) <= set(BY_KEY)


def test_what_was_entered_is_written_in():
    survey = filled(BRICK).cannot_reach("jamb")
    sheets = survey_sheets(survey=survey)
    assert [found for sheet in sheets for found in collisions(sheet)] == []
    told = texts(sheets)
    assert "39-1/2 in" in told and "The brick house" in told
    assert [b.name for b in blanks_of(BY_KEY["jamb"], "feet-inches", survey) if b.told] == [
        "cannot reach"
    ]
    assert [b.name for b in blanks_of(BY_KEY["flue shape"], "feet-inches", survey) if b.told] == [
        "rectangular"
    ]
    long = Survey("x" * 190, "").put("jamb, left", "y" * 190)
    assert [found for sheet in survey_sheets(survey=long) for found in collisions(sheet)] == []


@pytest.mark.parametrize("paper", PAPER_SIZES)
def test_what_was_measured_is_clean(paper):
    told = surveyed(filled(BRICK).cannot_reach("lintel bearing"))
    sheets = measured_sheets(told, Design(), paper=paper)
    assert [found for sheet in sheets for found in collisions(sheet)] == []
    flat = texts(sheets)
    for text in ("1b: 3'-4\"", "3: 2'-5\"", "44: 18'-11\"", "45: 2'-10\""):
        assert text in flat
    at = flat.index
    assert (
        at("Signs of trouble that were seen") < at("What is doubtful") < at("Measured beside drawn")
    )


SHARES = st.dictionaries(
    st.sampled_from([e.key for e in WALK]), st.floats(0.0, 1.0), min_size=4, max_size=14
)


@given(shares=SHARES, name=st.sampled_from(list(SKETCHES)))
@example(
    {
        "opening width": 0.0,
        "mantel projection": 5e-324,
        "opening height": 0.0,
        "height before raising": 0.0,
    },
    "section",
)
@settings(deadline=None)
def test_any_fireplace_that_can_be_drawn_is_clean(shares, name):
    """However it was raised, tilted or cut short: no word over a line, nothing off the sheet."""
    survey = Survey()
    for key, share in shares.items():
        survey = survey.put(BY_KEY[key].boxes[0], words(BY_KEY[key].spec, share))
    told = surveyed(survey)
    if told.design is None:
        return
    sheet = Sheet(140.0, 195.0)
    measured_view(sheet, Cell(2.0, 2.0, 138.0, 193.0), name, told, Design())
    assert collisions(sheet) == []


def test_a_line_ends_where_the_window_does():
    """By hand: a line through a window of one by one, in at the left, out at the top."""
    window = (0.0, 0.0, 1.0, 1.0)
    assert list(clipped([(-1.0, 0.0), (1.0, 2.0)], window)) == []
    assert list(clipped([(-0.5, 0.0), (1.0, 1.5)], window)) == [[(0.0, 0.5), (0.5, 1.0)]]
    inside = [(0.1, 0.1), (0.9, 0.1), (0.9, 0.9)]
    assert list(clipped(inside, window)) == [inside]
    out_and_in = [(0.5, 0.5), (1.5, 0.5), (0.5, 0.6)]
    assert [len(run) for run in clipped(out_and_in, window)] == [2, 2]


def test_gaps_are_named():
    told = surveyed(filled(BRICK).cannot_reach("lintel bearing").put("breast, left", "x"))
    said = list(gaps(told))
    assert said[0] == "Cannot be reached: lintel bearing."
    assert said[1].startswith("Cannot be read") and "breast" in said[1]
    assert said[2].startswith("Not looked at") and "liner kind" in said[2]
    assert "flue depth" in said[3] and "opening width" not in said[3]
    assert said[4].startswith("Nobody has entered")


def test_another_paper_is_refused_in_a_sentence(tmp_path):
    with pytest.raises(InputError, match="letter and a4"):
        print_survey(tmp_path / "x.pdf", "foolscap")


def test_the_command_prints_them(tmp_path, capsys):
    kept, out = tmp_path / "survey.toml", tmp_path / "sheets.pdf"
    kept.write_text(survey_text(filled(BRICK)))
    assert main(["survey", str(out)]) == 0
    assert f"{len(survey_sheets())} pages" in capsys.readouterr().out
    told = ["survey", str(out), "--told", str(kept), "--paper", "a4", "--units", "millimetres"]
    assert main(told) == 0 and out.read_bytes().startswith(b"%PDF")
    kept.write_text("[told]\nx = 1\n")
    assert main(told) == 2 and "x" in capsys.readouterr().err
    assert main(["survey", str(tmp_path / "nowhere" / "x.pdf")]) == 2
    with pytest.raises(SystemExit):
        main(["survey", str(out), "--paper", "foolscap"])


def test_the_command_knows_every_paper():
    assert set(PAPERS) == set(PAPER_SIZES)


def test_entries_that_do_not_go_together_make_no_paper(tmp_path):
    told = surveyed(filled({"opening height, left": "20 in", "height before raising": "30 in"}))
    with pytest.raises(InputError, match="Nothing can be drawn"):
        print_measured(tmp_path / "x.pdf", told, Design())
    assert not (tmp_path / "x.pdf").exists()


def test_both_are_printed(tmp_path):
    told = surveyed(filled(BRICK))
    pages = print_survey(tmp_path / "blank.pdf"), print_measured(tmp_path / "m.pdf", told, Design())
    assert pages[0] == len(survey_sheets()) and pages[1] == len(measured_sheets(told, Design()))
    for name in ("blank.pdf", "m.pdf"):
        assert (tmp_path / name).read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize("entry", sampled(list(WALK), 20), ids=lambda e: e.key)
def test_every_entry_can_be_out_of_reach(entry):
    *asked, last = blanks_of(entry, "feet-inches")
    assert (last.name, last.box, last.unit, last.told) == ("cannot reach", True, "", "")
    assert asked and all(one.box != reads_number(entry.spec) for one in asked)
    assert NUMBER[entry.key] == WALK.index(entry) + 1


def test_arrows_over_the_roof_stand_where_a_tape_is_held():
    """Across to the ridge, or to the edge of the picture 3.2 m away, a hand over the roof; what is
    near stands at 0.72 of that way, from the crown up.
    """
    for ridge, away in ((2.0, 2.0), (3.5, 3.2), (9.0, 3.2)):
        made = build_geometry(
            replace(sketched().design, roof=replace(sketched().design.roof, ridge_distance=ridge))
        )
        held = {
            key: hold(made)
            for key in ("ridge distance", "top over what is near")
            for _, hold in SPANS[key]
        }
        ((start, end),) = held["ridge distance"]
        assert start[0] == 0.0 and end[0] == pytest.approx(away) and start[1] == end[1]
        ((foot, top),) = held["top over what is near"]
        assert foot[0] == top[0] == pytest.approx(0.72 * away)
        assert foot[1] == made.frame.crown_top and top[1] == made.frame.highest_within_reach


def bounds(rings):
    """Left, right, bottom and top of some rings, to a hundredth of a millimeter."""
    points = [point for ring in rings for point in ring]
    return [round(float(end(p[axis] for p in points)), 5) for axis in (0, 1) for end in (min, max)]


@pytest.mark.parametrize("ridge", ["along the opening", "front to back"])
@pytest.mark.parametrize("flue", ["8.5x13", "10"])
def test_the_chimney_is_sketched_as_its_solids_stand(ridge, flue):
    """Plan, side and view along the ridge against cuts through the solids themselves."""
    told = {"flue.shape": "round" if flue == "10" else "rectangular", "flue.size": flue,
            "roof.ridge_runs": ridge, "chimney.overhang": "3 in", "chimney.wash": "2 in"}  # fmt: skip
    made = build_geometry(change(sketched().design, told))
    part = made.by_name
    low = part["crown"].bottom
    crown, wall, liner = (
        bounds(part[name].plan(z)[0])
        for name, z in (("crown", low + 1e-4), ("chimney walls", low - 1e-4),
                        ("flue liner", part["flue liner"].top - 1e-4))
    )  # fmt: skip
    inner = bounds(part["flue liner"].plan(low)[1])
    x, y = (liner[0] + liner[1]) / 2, (liner[2] + liner[3]) / 2

    def about(box, sides=4):
        placed = [box[0] - x, box[1] - x, box[2] - y, box[3] - y]
        return pytest.approx(placed[:sides], abs=1e-4)

    hidden, over, bore, outside, *side = [line for line, _ in SKETCHES["top"].lines(made)]
    assert bounds([hidden]) == about(wall) and bounds([over]) == about(crown)
    assert bounds([bore]) == about(inner) and bounds([outside]) == about(liner)
    left, right, up, down = side[:2], side[2], side[3:5], side[5]
    assert bounds(left)[:2] == about(wall, 2) and bounds([right])[:2] == about(crown, 2)
    assert bounds([down])[:2] == about(liner, 2) and bounds(up)[:2] == about(liner, 2)
    levels = sorted({round(z - right[0][1], 5) for _, z in (*right, *down)})
    steps = {z - low for ring in part["crown"].section() for _, z in ring}
    steps |= {part["flue liner"].top - low}
    assert levels == pytest.approx(sorted({round(z, 5) for z in steps}), abs=1e-4)

    low_end, high_end = (2, 3) if ridge == "along the opening" else (0, 1)

    def wide(box):
        return pytest.approx(box[high_end] - box[low_end], abs=1e-4)

    block, cap, front, back, over_flue = [line for line, _ in SKETCHES["roof"].lines(made)][-5:]
    shoulder = part["shoulder"]
    assert {round(z, 5) for _, z in block} == {
        round(float(z), 5)
        for z in (made.frame.grade, shoulder.bottom, shoulder.top, part["chimney walls"].top)
    }
    assert block[4][0] - block[3][0] == wide(wall) and cap[1][0] - cap[0][0] == wide(crown)
    assert {z for _, z in cap} == {low, part["crown"].top}
    assert back[0][0] - front[0][0] == wide(inner) and over_flue == [front[1], back[1]]
    assert [z for _, z in front] == [part["flue liner"].bottom, part["flue liner"].top]
    assert front[0][0] + back[0][0] == pytest.approx(cap[0][0] + cap[1][0], abs=1e-4)
