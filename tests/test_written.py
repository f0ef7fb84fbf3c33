"""What stands on the written sheets and in the folds of the panel, read back cell by cell; the title
block and the scale bar of a sheet, measured.
"""

import html
import re
from collections import Counter
from html.parser import HTMLParser

import pytest

from fireplace_calc import assess, change, load
from fireplace_calc.base.printing import show
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import SYSTEMS, InputError
from fireplace_calc.brickwork import lay_brickwork
from fireplace_calc.build.notes import cautions
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.composed.compose import CELLS, HEIGHT, RULES, WHOLE, WIDTH
from fireplace_calc.drawing.papers import one_sheet, work_sheets, written_sheets
from fireplace_calc.drawing.plates.sizes import ON_A_TABLE, PAPERS, paper
from fireplace_calc.drawing.sheets.lettering import width
from fireplace_calc.drawing.sheets.lists import Column, Table
from fireplace_calc.drawing.sheets.style import SMALL
from fireplace_calc.drawing.work_chart.at_hand import WHOLE as COUNTED
from fireplace_calc.explore.worked_figures import work_figures
from fireplace_calc.panels import found as checked
from fireplace_calc.panels import html as page
from fireplace_calc.proportion import find_guides
from fireplace_calc.report import draft_report
from fireplace_calc.report.assumed_inputs import to_enter
from fireplace_calc.report.books import side_by_side
from fireplace_calc.report.sentences import (
    answer,
    answers_rest,
    asked,
    compared,
    judged_tally,
    quantity,
    sign,
    weight,
)

BOATHOUSE = assess(load(DATA / "designs" / "boathouse-laid.toml"))
PLAIN = assess(Design())
METRIC = "millimetres"


# -- paper and title block -----------------------------------------------------------------------
def test_papers_have_the_sizes_of_their_standards():
    """ANSI letter is 11 by 8-1/2 in; ISO 216: A4 297 by 210, A3 420 by 297 mm."""
    assert PAPERS["letter"] == pytest.approx((11 * 25.4, 8.5 * 25.4))
    assert PAPERS["A4"] == (297.0, 210.0) and PAPERS["A3"] == (420.0, 297.0)
    assert paper("feet-inches").name == "11x17" and paper(METRIC).name == "A3"
    assert paper("feet-inches", usual=ON_A_TABLE).name == "letter"
    with pytest.raises(InputError, match="Paper is 'B5', but there are only letter, 11x17, A4, A3"):
        paper(METRIC, "B5")


def test_the_cells_of_four_views_cover_the_sheet_once():
    area = sum((c.right - c.left) * (c.top - c.bottom) for c in CELLS.values())
    assert area == WIDTH * HEIGHT == WHOLE.right * WHOLE.top
    cells = list(CELLS.values())
    assert not any(a.meets(b) for k, a in enumerate(cells) for b in cells[:k])
    for name, line in RULES.items():
        cell = CELLS[name]
        for x, y in line:
            assert cell.left <= x <= cell.right and cell.bottom <= y <= cell.top
        (ax, ay), (bx, by) = line
        off = ax - cell.left if ax == bx else ay - cell.bottom
        assert off == pytest.approx(0.4), "beside the edge it shares with the next"
        assert max(abs(bx - ax), abs(by - ay)) > 90


# -- written sheets ------------------------------------------------------------------------------
def columns():
    for module in (written_sheets, work_sheets, one_sheet):
        for name, value in vars(module).items():
            if isinstance(value, tuple) and value and isinstance(value[0], Column):
                yield f"{module.__name__}.{name}", value


@pytest.mark.parametrize(
    ("name", "shown"), [*columns()], ids=lambda v: v if isinstance(v, str) else ""
)
def test_no_word_of_a_heading_is_broken(name, shown):
    """On letter paper, 257.4 mm between the margins."""
    whole = sum(column.share for column in shown)
    for column in shown:
        room = 257.4 * column.share / whole - 2.0
        for word in column.heading.split():
            assert width(word, SMALL, True) <= room, (name, word)


@pytest.mark.parametrize("units", SYSTEMS)
def test_what_stands_is_the_assessments(units):
    for result in (BOATHOUSE, PLAIN):
        aired = list(written_sheets.airing(result, units))
        stands, *calls = written_sheets.standing(result, units)
        assert [table.rows for table in aired] == [
            tuple(draft_report.opinion_rows(result, units)),
            tuple(draft_report.first_hour_rows(result, units)),
        ]
        for table, found in ((stands, result.structure.findings),):
            shown = [f for f in found if f.verdict != "does not apply"]
            for row, f in zip(table.rows, shown, strict=True):
                provided, _, margin = compared(f, units)
                assert row[:3] == (sign(f), f.said, f"{f.title} ({f.key})")
                assert row[3:6] == (provided, asked(f, units), margin)
                assert row[6] == f"{f.clause}, {f.edition}"
                assert row[7] == " ".join(text for text in (f.note, f.why, to_enter(f)) if text)
        assert calls == [f"Call an engineer. {why}" for why in result.structure.engineer]
        counted = f"{judged_tally(result.structure.findings)}."
        assert stands.before == " ".join((counted, *result.structure.remarks))


@pytest.mark.parametrize("units", SYSTEMS)
def test_the_cut_list_on_paper_is_the_bricks_that_are_laid(units):
    work = lay_brickwork(PLAIN.geometry)
    parts = list(written_sheets.cutting(PLAIN, units))
    faces, cuts = [part for part in parts if isinstance(part, Table)]
    for row, layout in zip(faces.rows, work.layouts, strict=True):
        assert row[0] == layout.face.name.capitalize() and row[1] == layout.bond
        assert [int(n) for n in row[2:6]] == [
            layout.face.alike, layout.whole, layout.cut, len(layout.slivers),
        ]  # fmt: skip
        assert (row[6], row[7]) == (show(layout.shifted, "length", units), layout.note)
    size = 1.0 if units == METRIC else 1 / 25.4
    for row, (shape, count) in zip(cuts.rows, work.cuts.items(), strict=True):
        assert (int(row[0]), int(row[1])) == (count, len(shape))
        sides = [float(s) for s in row[2].split(", ")]
        assert sides == pytest.approx([s * size for s, _ in shape], abs=0.006 if size < 1 else 0.51)
        assert row[3].split(", ") == [str(angle) for _, angle in shape]
    assert cuts.columns[2].heading == f"Sides in turn [{'mm' if units == METRIC else 'in'}]"
    said = " ".join(part for part in parts if isinstance(part, str))
    courses = work.lining_courses
    assert f"smoke shelf: {courses.courses} courses come out even" in said
    assert f"with joints of {show(courses.joint, 'length', units)}" in said
    assert ("wider than a firebox allows" in said) == (not courses.fits)
    for name, found in (("hearth slab", work.base), ("hearth extension", work.extension)):
        assert (f"Block under the {name}" in said) == bool(found)
        if found:
            assert (
                f"Block under the {name}: {found.whole} courses of block, {found.half} half-high"
                in said
            )
            assert ("one course sawn to" in said) >= bool(found.sawn)
            assert ("out by" in said) >= (not found.level)
    none = list(written_sheets.cutting(assess(change(Design(), {
        "method": "modular", "firebox.lining": "refractory section"})), units))  # fmt: skip
    assert isinstance(none[0], (str, Table))


# -- folds ---------------------------------------------------------------------------------------
class Cells(HTMLParser):
    """Tables of a page: caption, headings, rows of cell texts, shares of the columns."""

    def __init__(self, text):
        super().__init__()
        self.tables, self.into, self.classes = [], None, []
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        told = dict(attrs)
        if tag == "table":
            self.tables.append({"caption": "", "head": [], "rows": [], "shares": [], "css": []})
        elif tag == "col":
            share = re.search(r"width:([\d.e+]+)%", told["style"])[1]
            self.tables[-1]["shares"].append(float(share))
        elif tag == "tr":
            self.tables[-1]["rows"].append([])
        elif tag in ("td", "th", "caption"):
            where = self.tables[-1]
            # the first row is headings; one without words is a plain cell
            tag = "th" if tag == "td" and len(where["rows"]) == 1 else tag
            self.into = tag
            if tag == "th":
                where["head"].append("")
            elif tag == "td":
                where["rows"][-1].append("")
                where["css"].append(told.get("class", ""))
        elif tag == "br" and self.into == "td":
            self.tables[-1]["rows"][-1][-1] += " | "

    def handle_data(self, data):
        where = self.tables[-1] if self.tables else None
        if where is None or self.into is None:
            return
        if self.into == "caption":
            where["caption"] += data
        elif self.into == "th":
            where["head"][-1] += data
        else:
            where["rows"][-1][-1] += data

    def handle_endtag(self, tag):
        if tag in ("td", "caption", "tr", "table"):
            self.into = None


def tables(text):
    made = Cells(text).tables
    for one in made:
        empty = len(one["shares"]) - len(one["head"])  # a corner without a name is no heading
        if empty > 0 and one["rows"][0] == [""] * empty:
            one["head"] = one["rows"].pop(0) + one["head"]
            one["css"] = one["css"][empty:]
        one["rows"] = [row for row in one["rows"] if row]
        assert sum(one["shares"]) == pytest.approx(100, abs=1.0), one["caption"]
        assert len(one["head"]) == len(one["shares"]) and one["rows"] is not None
        assert all(len(row) == len(one["head"]) for row in one["rows"]), one["caption"]
    return made


@pytest.mark.parametrize("units", SYSTEMS)
def test_findings_in_the_panel_are_the_assessments(units):
    (head,) = tables(checked.finding_head("Checks against US IRC 2021", "Rule"))
    assert head["caption"] == "Checks against US IRC 2021" and not any(head["rows"])
    for f in BOATHOUSE.findings:
        (table,) = tables(checked.finding_row(f, units, "Rule"))
        assert table["head"] == head["head"] and not table["caption"]
        (row,) = filter(None, table["rows"])
        provided, _, margin = compared(f, units)
        assert row[0] == f"{sign(f)} {f.said}"
        note = f" {f.note[0].upper()}{f.note[1:]}" if f.note else ""
        note += f" {to_enter(f)}" if to_enter(f) else ""
        assert row[1] == f"{f.title} | {f.why}{note}"
        assert row[2:5] == [provided, asked(f, units), margin]
        assert row[5] == f"{f.key}, {f.clause} | {f.edition}, {f.confidence}"
        assert ("short" in table["css"]) == (f.verdict == "falls short")


@pytest.mark.parametrize("units", SYSTEMS)
def test_the_draft_in_the_panel_is_the_reports(units):
    text = checked.draft_sentence(BOATHOUSE, units) + checked.draft(BOATHOUSE, units)
    evenings, losses, opinions, hour = tables(text)
    assert [tuple(row) for row in opinions["rows"]] == draft_report.opinion_rows(BOATHOUSE, units)
    assert [tuple(row) for row in hour["rows"]] == draft_report.first_hour_rows(BOATHOUSE, units)
    assert [tuple(row) for row in evenings["rows"]] == draft_report.case_rows(BOATHOUSE, units)
    assert [tuple(row) for row in losses["rows"]] == draft_report.loss_rows(BOATHOUSE)
    assert evenings["head"] == list(draft_report.COLUMNS)
    for f in BOATHOUSE.judgement:
        (table,) = tables(checked.finding_row(f, units, "Finding"))
        (row,) = filter(None, table["rows"])
        assert row[1].endswith(f" Based on: {f.source}.") and row[5].startswith(
            f"{f.key}, {f.clause}"
        )
    said = html.unescape(re.sub("<[^>]+>", "", text))
    for words in (draft_report.LABEL, draft_report.sized(BOATHOUSE, units), draft_report.BAND,
                  draft_report.likely(BOATHOUSE, units)):  # fmt: skip
        assert words in said


@pytest.mark.parametrize("units", SYSTEMS)
def test_books_order_and_figures_in_the_panel(units):
    (table,) = tables(checked.books(BOATHOUSE, units))
    asked_all = side_by_side(BOATHOUSE.design)
    for row, q in zip(table["rows"], asked_all, strict=True):
        assert row == [q.text, *(answer(a, units) for a in q.answers), q.why]
    once = answers_rest(a for q in asked_all for a in q.answers)
    assert once.startswith("A sign in brackets") and html.escape(once) in checked.books(
        BOATHOUSE, units
    )
    (table,) = tables(page.takeoff(BOATHOUSE, units))
    *lines, last = table["rows"]
    for row, r in zip(lines, BOATHOUSE.takeoff, strict=True):
        assert row == [
            r.item, r.material, quantity(r.net, r, units), quantity(r.order, r, units),
            show(r.weight_kg, "mass", units), r.note,
        ]  # fmt: skip
    assert last[0] == "The whole as it stands"
    assert last[4] == show(BOATHOUSE.weight, "mass", units)
    (table,) = tables(page.figures(BOATHOUSE, units))
    for row, one in zip(table["rows"], work_figures(BOATHOUSE, units), strict=True):
        assert row == [one.name, one.formula, one.numbers, one.result, one.source]
    found = find_guides(BOATHOUSE.geometry, units)
    (table,) = tables(page.guided(found, BOATHOUSE, units))
    for row, g in zip(table["rows"], found, strict=True):
        assert row == [g.name.capitalize(), g.sentence, f"{g.source.text}, {g.source.confidence}"]


def test_one_sentence_tells_the_picture_to_whoever_cannot_see_it():
    text = html.unescape(re.sub("<[^>]+>", "", page.sentence(BOATHOUSE, "feet-inches")))
    counts, assumed = BOATHOUSE.counts, BOATHOUSE.assumed
    top = show(BOATHOUSE.geometry.frame.crown_top, "length")
    assert text == (
        f"Boathouse club room, laid: opening 3'-6\" wide, 3'-0\" high, 20 flue sections, chimney top {top}"
        f" above the floor, {show(BOATHOUSE.weight, 'mass')} as it stands. US IRC 2021:"
        f" {counts['falls short']} fall short, {counts['not checked']} not checked,"
        f" {counts['meets']} meet ({assumed['meets']} of them on an assumption),"
        f" {counts['does not apply']} do not apply ({assumed['does not apply']} of them on an"
        " assumption)."
    )
    shallow = assess(change(Design(), {"firebox.depth": "12 in", "name": "<b> & co"}))
    said = page.sentence(shallow, METRIC)
    assert "&lt;b&gt; &amp; co" in said
    assert f"<b>{shallow.counts.get('falls short', 0)}</b> fall short" in said
    assert "<b>0</b> fall short" in page.sentence(PLAIN, METRIC)
    assert all(html.escape(note) in said for note in shallow.geometry.frame.adjusted)


def test_what_is_said_aloud_and_what_is_only_written():
    assert page.trouble("") == ""
    assert page.trouble("a < b") == '<div class="trouble" role="alert">Not changed. a &lt; b</div>'
    assert page.remark("a & b") == '<div class="sentence">a &amp; b</div>'
    assert page.heard("done") == '<div class="sentence" role="status">done</div>'
    hint = page.checklist_hint("UK <J>", 3)
    assert "What UK &lt;J&gt; asks" in hint and "<b>3</b> not answered yet" in hint


def test_words_and_tables_stand_in_a_fold_as_on_paper():
    """Shares become per cents; a narrow column's longest word asks for a least width; a box to
    tick.
    """
    shown = Table(
        "T < 1", (Column("Item", 10), Column("Said at length", 50)), (("a", "<b>"),), True, "B"
    )
    text = page.flow(["first", shown])
    assert text.startswith('<div class="sentence">first</div><div class="sentence">B</div>')
    (table,) = tables(text)
    assert (table["caption"], table["head"]) == ("T < 1", ["Item", "Said at length"])
    assert table["shares"] == pytest.approx([16.7, 83.3])
    assert table["rows"] == [["☐ a", "<b>"]] and table["css"] == ["n", "why"]
    assert 'style="--least:46em"' in text
    plain = page.flow(
        [Table("T", (Column("Item", 1), Column("Unpronounceability", 1)), (("a", "b"),))]
    )
    assert "☐" not in plain and tables(plain)[0]["css"] == ["n", "n"]
    narrow = page.flow(
        [Table("T", (Column("Unpronounceability", 1), Column("x", 19)), (("a", "b"),))]
    )
    assert int(re.search(r"--least:(\d+)em", narrow)[1]) > 150
    (side,) = tables(page.options([("Opening", ("1", "2"))], ["One", "Two"]))
    assert side["head"] == ["", "One", "Two"] and side["rows"] == [["Opening", "1", "2"]]
    assert side["shares"] == pytest.approx([16, 42, 42])
    assert "--least" not in page.table("T", (100,), ("a",), ())


@pytest.mark.parametrize("units", SYSTEMS)
def test_the_order_of_work_on_paper_is_the_plan(units):
    """Step by step what it takes, hours and day; whole pieces by number, the rest in its unit."""
    for result in (BOATHOUSE, PLAIN):
        plan = result.work
        parts = list(work_sheets.working(result, units))
        steps, lifts, warned = [part for part in parts if isinstance(part, Table)]
        assert steps.tick and not lifts.tick
        for words in (
            f"About {plan.hours:.0f} hours at the wall", f"{-int(-plan.calendar // 1)} days with",
            plan.while_working.do, plan.afterwards.do, f"within {plan.open_time:g} h.",
        ):  # fmt: skip
            assert words in steps.before
        used, told = Counter(), Counter()  # a piece that two steps share is told in the first
        for row, step in zip(steps.rows, plan.steps, strict=True):
            assert row[:3] == (str(step.number), step.name, ", ".join(step.why))
            for need in step.goods:
                name = need.item[0].lower() + need.item[1:]
                many = re.search(rf"(\d+) × {re.escape(name)}(, |$)", row[3])
                if need.unit in COUNTED:
                    used[name] += need.quantity
                    told[name] += int(many[1]) if many else 0
                    assert used[name] - 1e-6 <= told[name] < used[name] + 1
                else:
                    assert f"{need.quantity:.2g} {need.unit} {name}" in row[3]
            assert row[4] == ("" if not step.batches else str(step.batches))
            assert float(row[5]) == pytest.approx(step.hours, abs=0.051)
            assert int(row[6]) == int(step.start + 1 + 1e-9)  # its first day
            for hold in step.hold_points:
                assert f"Hold, {hold.kind}: {hold.what}" in row[7]
            for wait in step.waits:
                assert f"Wait {wait.days:g} d: {wait.what}." in row[7]
            assert all(caution in row[7] for caution in step.cautions)
        for row, lift in zip(lifts.rows, plan.lifts, strict=True):
            assert (row[0], row[1], float(row[2])) == (
                str(lift.step), lift.item, pytest.approx(lift.count, rel=6e-3),
            )  # fmt: skip
            assert row[3] == ("not known" if lift.weight is None else weight(lift.weight, units))
            assert row[4:6] == (
                show(lift.height, "length", units), show(lift.reach, "length", units),
            )  # fmt: skip
            assert row[6] == weight(lift.allowed, units) and row[8:] == (lift.verdict, lift.note)
            if lift.index_one is None:
                assert row[7] == ""
            elif lift.index_one == float("inf"):
                assert row[7] == "out of reach"
            else:
                assert row[7] == f"{lift.index_one:.1f}, {lift.index_two:.1f}"
        for row, c in zip(warned.rows, cautions(result.pack), strict=True):
            assert (row[0], row[2]) == (c.topic, f"{c.source}, {c.confidence}")
            assert row[1] == c.figured(units) and (row[1] == c.what) == (c.number is None)
        said = [part for part in parts if isinstance(part, str)]
        stages = [part for part in said if part.startswith("Staging")]
        for text, stage in zip(stages, plan.staging, strict=True):
            level = show(stage.level, "length", units)
            assert text.startswith(f"Staging {stage.number}: floor at {level}, ")
            assert text.endswith(", guard rails.") == bool(stage.rails)
            assert " and ".join(stage.sides) in text
        (curing,) = [part for part in said if part.startswith("Curing")]
        for fire in plan.curing.fires:
            assert f"day {fire.day}: {100 * fire.share:.0f}% of a full fire, {fire.note}" in curing
        assert f"Curing {plan.curing.days} days" in curing and plan.curing.note in curing
