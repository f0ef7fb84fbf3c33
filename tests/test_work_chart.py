"""The order of work on paper: the chart, batches, cards, lifts; and that its totals agree."""

import re
from collections import defaultdict
from dataclasses import replace
from itertools import pairwise
from math import ceil, inf
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import given, settings
from sampled import sampled
from strategies import designs

from fireplace_calc import assess, change, load
from fireplace_calc.base.resources import DESIGNS
from fireplace_calc.base.units import CUFT
from fireplace_calc.build.lifting.equation import HOIST, ONE, TWO
from fireplace_calc.build.notes import cautions
from fireplace_calc.build.on_site import batching
from fireplace_calc.build.on_site.batching import list_batches
from fireplace_calc.build.on_site.set_in import list_set_in
from fireplace_calc.build.production_rates import MORTAR, REFRACTORY
from fireplace_calc.build.setting.setting_order import order_of_setting
from fireplace_calc.build.steps import ready_at
from fireplace_calc.drawing.pieces.set_pictures import pictures_of
from fireplace_calc.drawing.plates.sizes import PAPERS, SCALES, paper
from fireplace_calc.drawing.plates.whole_set import sheets
from fireplace_calc.drawing.sheets.canvas import Picture
from fireplace_calc.drawing.sheets.lists import wrapped
from fireplace_calc.drawing.sheets.overlaps import collisions
from fireplace_calc.drawing.sheets.sheet import Cell, Sheet
from fireplace_calc.drawing.work_chart import chart, set_rows
from fireplace_calc.drawing.work_chart.at_hand import (
    WHOLE,
    hands,
    last_day,
    lies_ready,
    on_days,
    straight_after,
    whole_counts,
)
from fireplace_calc.drawing.work_chart.batch_rows import batch_texts, pails_text
from fireplace_calc.drawing.work_chart.chart import plates
from fireplace_calc.drawing.work_chart.lift_rows import (
    indices,
    lift_table,
    lift_texts,
    staging_rows,
)
from fireplace_calc.drawing.work_chart.set_rows import in_turn, rows_of_set
from fireplace_calc.drawing.work_chart.step_bars import day_axis
from fireplace_calc.drawing.work_chart.step_cards import MOST, by_kind, card, cards, said_on
from fireplace_calc.geometry.from_set.set_up import set_up
from fireplace_calc.report.for_client.three_sentences import client_cautions
from fireplace_calc.report.yard.by_supplier import yard_order
from fireplace_calc.takeoff.cost import prices
from fireplace_calc.takeoff.goods import all_goods

SHIPPED = sorted(path.stem for path in DESIGNS.glob("*.toml"))
MAKER = ("work_chart.chart",)


def shipped(name):
    return load(DESIGNS / f"{name}.toml")


def used(sheet):
    """Share of squares of 20 mm that hold ink. [-]"""
    picture = Picture(sheet.width, sheet.height, 4.0, "print")
    picture.png([(Cell(0, 0, sheet.width, sheet.height), sheet)])
    dark = np.asarray(picture.renderer.buffer_rgba())[:, :, :3].min(axis=2) < 160
    high, wide = dark.shape
    squares = [
        dark[y : y + 80, x : x + 80].any()
        for y in range(0, high - 40, 80)
        for x in range(0, wide - 40, 80)
    ]
    return sum(squares) / len(squares)


@pytest.mark.parametrize(
    ("size", "name", "units"),
    sampled(
        [
            (size, SHIPPED[(n + turn) % len(SHIPPED)], units)
            for turn in range(len(SHIPPED))
            for units in SCALES
            for n, size in enumerate(PAPERS)
        ],
        8,
    ),
)
def test_every_paper_is_clean(name, size, units):
    made = sheets(assess(shipped(name)), units, size, makers=MAKER)
    assert [fault for _, sheet in made for fault in collisions(sheet, 0.7)] == []


@pytest.mark.parametrize(
    ("name", "units"), sampled([(name, units) for units in SCALES for name in SHIPPED], 1)
)
def test_two_sheets_of_a3_hold_it_and_large_sheets_are_used(name, units):
    result = assess(shipped(name))
    for size, most in (("A3", 2), ("11x17", 3)):
        made = sheets(result, units, size, makers=MAKER)
        assert len(made) <= most
        assert min(used(sheet) for _, sheet in made) >= 0.5, size


@pytest.mark.parametrize(
    ("key", "end"),
    sampled(
        [
            (key, (end + n) % 2)
            for end in (0, 1)
            for n, key in enumerate(
                ("people", "day", "brick_pace", "piece_pace", "lift_height", "cure")
            )
        ],
        6,
    ),
)
def test_both_ends_of_the_days_work_have_a_clean_chart(key, end):
    ends = {
        "people": ("1", "12"),
        "day": ("1", "14"),
        "brick_pace": ("5", "400"),
        "piece_pace": ("1", "60"),
        "lift_height": ("3 ft", "8 ft"),
        "cure": ("1", "90"),
    }
    result = assess(change(shipped("boathouse-laid"), {f"work.{key}": ends[key][end]}))
    for size in ("11x17", "letter"):
        made = sheets(result, "feet-inches", size, makers=MAKER)
        assert [fault for _, sheet in made for fault in collisions(sheet, 0.7)] == []
    assert all(1 <= hands(result.work, s)[0] <= result.work.people for s in result.work.steps)


@settings(max_examples=8, deadline=None)
@given(designs())
def test_any_design_has_its_chart(design):
    result = assess(design)
    on = paper("feet-inches", "A3")
    made = plates(result, "feet-inches", on)
    assert [fault for plate in made for fault in collisions(plate.sheet, 0.7)] == []
    written = [label.text for plate in made for label in plate.sheet.labels]
    assert {str(step.number) for step in result.work.steps} <= set(written)


@settings(max_examples=12, deadline=None)
@given(designs())
def test_totals_days_and_people_agree(design):
    plan = assess(design).work
    assert sum(step.hours for step in plan.steps) == pytest.approx(plan.hours)
    assert sum(step.days for step in plan.steps) == pytest.approx(plan.days)
    assert sum(step.days + step.idle for step in plan.steps) == pytest.approx(plan.calendar)
    assert on_days(plan.steps[-1]).split("–")[-1] == str(last_day(plan.calendar))
    for one, two in pairwise(plan.steps):
        assert two.start >= one.end - 1e-9
    for step in plan.steps:
        assert 1 <= hands(plan, step)[0] <= plan.people
        for n in step.after:
            before = plan.steps[n - 1]
            assert before.end <= step.start + 1e-9
            for wait in before.waits:
                assert not wait.holds_up or ready_at(before, wait) <= step.start + 1e-9


@settings(max_examples=12, deadline=None)
@given(designs())
def test_what_the_steps_take_is_what_is_ordered_before_waste(design):
    """Pieces at hand and batches add up to the list of goods, net."""
    result = assess(design)
    net = {row.item: row.net for row in result.takeoff}
    whole = defaultdict(int)
    for counts in whole_counts(result.work.steps):
        for item, count in counts.items():
            whole[item] += count
    for item, count in whole.items():
        assert count == ceil(net[item] - 1e-6), item
    held = defaultdict(float)
    for step in result.work.steps:
        for one in step.goods:
            if one.unit not in WHOLE:
                held[one.item] += one.volume
    for batch in list_batches(result.work, design.work.mortar_mix):
        crown = held["Crown mortar"] if batch.item == MORTAR else 0.0
        assert batch.whole == pytest.approx(held[batch.item] + crown)
        assert batch.bought == pytest.approx(
            net[batch.item] + crown / (batch.whole / batch.bought), rel=1e-6
        )


def test_one_batch_of_mortar_holds_the_largest_of_any_step():
    plan = assess(shipped("boathouse-laid")).work
    mortar = next(b for b in list_batches(plan, "1:1:6") if b.item == MORTAR)
    assert mortar.makes >= max(step.batch for step in plan.steps)
    assert mortar.count == sum(step.batches for step in plan.steps)
    assert mortar.cement / mortar.makes == pytest.approx(mortar.sacks / mortar.whole)


def test_a_one_sack_batch_of_concrete():
    """USDA Farmers' Bulletin 1889 (1941), 1:2-1/2:5: to the cubic yard 5 sacks, 0.46 yd3 of sand
    and 0.92 yd3 of gravel; so a sack makes 5.4 ft3 of it with 2.48 and 4.97 ft3.
    """
    plan = assess(shipped("boathouse")).work
    found = {b.item: b for b in list_batches(plan, "1:1:6")}
    footing = found["Footing concrete"]
    assert footing.cement == 1.0
    assert footing.makes / CUFT == pytest.approx(5.4)
    assert footing.sand / CUFT == pytest.approx(27 * 0.46 / 5)
    assert footing.gravel / CUFT == pytest.approx(27 * 0.92 / 5)
    assert footing.count == ceil(footing.whole / footing.makes)


@pytest.mark.parametrize(
    ("concretes", "grout", "sacks"),
    [  # of 5.4 ft3 to a sack: two sacks are a small job, mixed half a sack at a time (our habit)
        ((10.7,), 0.0, 0.5),
        ((10.9,), 0.0, 1.0),
        ((5.3, 5.4), 0.0, 0.5),
        ((5.5, 5.4), 0.0, 1.0),
        ((10.7,), 40.0, 0.5),
        ((10.9,), 1.0, 1.0),
    ],
)
def test_a_small_job_of_concrete_is_mixed_by_half_sacks_whatever_grout_it_has(
    concretes, grout, sacks
):
    """Fine grout is one of cement to three of sand (ASTM C476, from memory)."""
    names = ("Footing concrete", "Hearth slab concrete")
    poured = [*zip(names, concretes, strict=False), *([("Core grout", grout)] if grout else ())]
    goods = [SimpleNamespace(item=n, unit="yd3", volume=v * CUFT) for n, v in poured]
    step = SimpleNamespace(refractory=0.0, goods=goods)
    found = list_batches(SimpleNamespace(mortar=0.0, steps=[step]), "1:1:6")
    assert [(batch.item, batch.cement) for batch in found] == [(name, sacks) for name, _ in poured]
    for batch, (_, volume) in zip(found, poured, strict=True):
        assert batch.whole == pytest.approx(volume * CUFT)
        assert batch.count == ceil(batch.whole / batch.makes - 1e-6)
        assert batch.bought * 27 == pytest.approx(volume)
        if batch.item == "Core grout":
            assert batch.sand / CUFT == pytest.approx(3 * sacks) and batch.gravel == 0.0
            assert batch.recipe == "1:3"


def test_mortar_of_type_s_by_hand():
    """ASTM C270, type S, 1:1/2:4-1/2 by volume (from memory); 38 parts make 27 (NAVEDTRA 14043,
    chapter 8): one sack, a cubic foot, makes 6 x 27/38 = 4.263 ft3.
    """
    design = change(shipped("boathouse-laid"), {"work.mortar_mix": "type S"})
    plan = assess(design).work
    mortar = next(b for b in list_batches(plan, "type S") if b.item == MORTAR)
    assert mortar.makes / mortar.cement / CUFT == pytest.approx(6 * 27 / 38)
    assert mortar.lime / mortar.cement * 1.25 == pytest.approx(0.5)  # a bag of lime is 1.25 ft3


@pytest.mark.parametrize("name", SHIPPED)
def test_cards_are_short_and_keep_every_check_and_wait(name):
    plan = assess(shipped(name)).work
    said = " ".join(text for steps in by_kind(plan).values() for text in said_on(steps))
    for step in plan.steps:
        assert all(hold.what in said for hold in step.hold_points)
        assert all(wait.what in said for wait in step.waits)
    assert len(cards(plan, 90.0)) >= len([s for s in by_kind(plan).values() if said_on(s)])
    long = "Plumb: jambs plumb, both sides alike, joints full and struck flush. " * 6
    assert len(wrapped(long, 87.0)) > MOST
    assert len(card("1  Walls", [long], 90.0)) > 1


def test_what_a_step_waits_for_is_not_told_twice():
    plan = assess(shipped("boathouse-laid")).work
    after = straight_after(plan)
    assert all(set(after[step.number]) <= set(step.after) for step in plan.steps)
    assert after[3] == [2]
    assert plan.steps[2].after == (1, 2)


def test_pieces_of_a_set_are_named_by_mark():
    plan = assess(shipped("boathouse")).work
    step = next(s for s in plan.steps if s.name == "Base plates")
    told = lies_ready(step, whole_counts(plan.steps)[step.number - 1], "feet-inches")
    assert told.startswith("pieces PL, PR; ")
    assert REFRACTORY.lower().split()[0] in told


def test_more_than_one_section_is_said_in_the_plural():
    """*11 firebox back section* reads as if the word had been put in by a machine."""
    plan = assess(shipped("boathouse-laid")).work
    told = "; ".join(
        lies_ready(step, counts, "feet-inches")
        for step, counts in zip(plan.steps, whole_counts(plan.steps), strict=True)
    )
    counted = re.findall(r"(\d+) [a-z ]*section(s?)", told)
    assert counted and all((count == "1") == (not many) for count, many in counted)


def test_days_have_a_line_each_where_there_is_room():
    assert day_axis(0.0, 150.0, 20.0).every == 1
    assert day_axis(0.0, 150.0, 400.0).every > 10
    assert day_axis(0.0, 150.0, 0.0).days == 1


def test_sand_in_pails():
    """A gallon is 231 cubic inches: five make 1155, 0.668 of a cubic foot."""
    assert pails_text(2 * 1155 / 1728 * CUFT, "feet-inches") == "about 2 pails of 5 gal"


def things(**changes):
    design = change(
        shipped("boathouse-laid"), {k.replace("__", "."): v for k, v in changes.items()}
    )
    result = assess(design)
    return result, {one.item: one for one in list_set_in(result.work, result.geometry)}


def test_what_is_set_in_has_its_step():
    result, found = things(
        throat__damper="throat",
        ground__ash_dump="yes",
        anchorage__vertical_bars_no4="4",
        roof__cricket="yes",
        ground__reinforced="yes",
        clearance__fireblock="noncombustible",
    )
    steps, frame = result.work.steps, result.geometry.frame
    parts = {
        item: {p.part for p in steps[one.step - 1].parts} for item, one in found.items() if one.step
    }
    assert parts["Damper"] & {"smoke chamber lining", "smoke chamber walls"}
    assert parts["Ash dump"] == {"hearth slab"}
    assert found["Footing bars"].step == found["Dowels"].step == 1
    passes = steps[found["Flashing"].step - 1]
    assert max(p.high for p in passes.parts) >= frame.uphill_contact
    assert found["Cricket"].step == found["Flashing"].step
    ceiling = result.design.house.ceiling
    assert max(p.high for p in steps[found["Fireblocking"].step - 1].parts) >= ceiling - 1e-6
    assert found["Fireblocking"].step <= found["Flashing"].step


def test_what_is_not_wanted_is_not_set_in_and_what_nobody_told_has_no_step():
    _, found = things(throat__damper="none", ground__ash_dump="no", roof__cricket="unknown")
    assert not {"Damper", "Top damper", "Ash dump", "Centering"} & set(found)
    assert found["Cricket"].step is None
    result, found = things(throat__damper="flue top")
    crown = next(s for s in result.work.steps if s.name == "Crown")
    assert found["Top damper"].step == crown.number


def test_an_arch_is_turned_on_a_centering():
    result, found = things(opening__head="segmental", opening__rise="4 in")
    assert any(p.part == "arch" for p in result.work.steps[found["Centering"].step - 1].parts)


@settings(max_examples=12, deadline=None)
@given(designs())
def test_order_of_work_and_yard_name_the_same_hardware(design):
    """What stands beside the list of goods is set in some step, and the other way round."""
    result = assess(design)
    found = {one.item: one.step is not None for one in list_set_in(result.work, result.geometry)}
    beside = {one.item: one.count is not None for one in yard_order(result, prices()).beside}
    same = ("Ash dump", "Bars and ties", "Clean-out door", "Cricket", "Fireblocking", "Flashing")
    for item in (*same, "Footing bars", "Straps and anchors", "Doors or accessory", "Centering"):
        assert found.get(item) == beside.get(item), item
    assert found.get("Outside air duct") == beside.get("Outside air kit")


def test_cards_say_what_is_set_in_and_what_nobody_told():
    result, found = things(roof__cricket="unknown")
    made = plates(result, "feet-inches", paper("feet-inches", "A3"))
    written = " ".join(label.text for plate in made for label in plate.sheet.labels)
    assert "Damper: dry on its seat" in written
    assert "Nobody has told yet whether there is" in written
    assert set(found)


def test_lifts_with_all_that_is_known_have_a_cell_for_every_column():
    plan = assess(shipped("boathouse")).work
    assert all(len(texts) == 9 for texts in lift_texts(plan, "feet-inches"))
    told = " ".join(texts[0] for texts in lift_texts(plan, "feet-inches"))
    assert "Pieces PL, PR" in told


def test_a_caution_names_a_piece_by_its_mark_as_it_is_written():
    plan = assess(shipped("boathouse")).work
    step = next(s for s in plan.steps if s.name == "Base plates")
    assert any(said.startswith("Lifting: piece PL, left base plate") for said in step.cautions)


def test_a_set_tells_its_pieces_in_turn_and_its_mixes():
    result = assess(shipped("boathouse"))
    made = plates(result, "feet-inches", paper("feet-inches", "A3"))
    written = " ".join(label.text for plate in made for label in plate.sheet.labels)
    assert "Pieces in the order they are set: PL.1" in written
    assert "F8.1 to F8.29" in written
    steps = order_of_setting(set_up(result.design).assembly, result.design.piece_set.lining)
    for step in steps:
        mark = step.name.split(".")[0]
        assert mark in in_turn(one.name for one in steps)
    assert rows_of_set(shipped("plain"), "feet-inches", 90.0) == []


def test_cards_of_pieces_go_by_the_people_and_staging_of_the_design():
    """A hand that picks up at the floor lifts less: the same design tells both chart and cards."""
    low = change(shipped("boathouse"), {"work.stack_height": "0 in"})
    usual = change(shipped("boathouse"), {"work.stack_height": "30 in"})
    strain = [
        [card.handling.lifted for card in pictures_of(one).cards if card.handling]
        for one in (low, usual)
    ]
    assert sum(strain[0]) > sum(strain[1])


def test_a_one_sack_batch_of_grout():
    """One of cement to three of sand (ASTM C476), 38 parts of which make 27 (NAVEDTRA 14043): with a
    sack, a cubic foot, 3 ft3 of sand make 4 x 27/38 = 2.842 ft3; placed within 1 1/2 h (ASTM C476).
    """
    one = batching._poured(next(item for item in all_goods() if item.endswith("grout")), 1.0, 1.0)
    assert (one.recipe, one.cement, one.gravel, one.good) == ("1:3", 1.0, 0.0, 1.5)
    assert one.sand / CUFT == pytest.approx(3.0)
    assert one.makes / CUFT == pytest.approx(4 * 27 / 38)
    assert one.count == ceil(1.0 / one.makes)
    assert one.sacks == pytest.approx(1.0 / one.makes)


def test_no_straps_are_none_to_set():
    assert "Straps and anchors" not in things(anchorage__strap_count="0")[1]
    assert "Straps and anchors" in things(anchorage__strap_count="2")[1]


def test_a_sack_is_94_pounds_and_a_bag_of_lime_50():
    plan = assess(shipped("boathouse-laid")).work
    mortar = next(b for b in list_batches(plan, "1:1:6") if b.item == MORTAR)
    one = batch_texts([replace(mortar, cement=1.0, lime=2.0)], "feet-inches")[1]
    assert one.startswith("1 sack cement (94 lb), 100 lb lime")
    one, *_, whole = batch_texts([replace(mortar, cement=1.0, lime=2.0)], "millimetres")[1:]
    assert one.startswith("43 kg cement, 45 kg lime") and "bags of 25 kg)" in whole
    assert "lb" not in one + whole and "sack" not in one + whole


@pytest.mark.parametrize(
    ("recipe", "gallons"), [("type M", 4.8), ("type N", 8.9), ("type O", 14.1), ("1:1:6", 8.8)]
)
def test_water_of_a_batch_is_what_solids_and_air_leave(recipe, gallons):
    """By absolute volumes, in cubic feet, to a sack of 94 lb. Type N, 1:1:6: 8 ft3 lie loose and make
    8 x 27/38 = 5.684. Cement 94 / (3.15 x 62.43) = 0.478, lime 40 / (2.3 x 62.43) = 0.279, sand 480 /
    (2.65 x 62.43) = 2.902, air 8 % 0.455, damp of the sand 24 / 62.43 = 0.384; 1.187 are left, at 7.48
    gallons to the foot 8.9. The other types likewise; by the bulletin 3.5 sacks, 2.6 bags of lime and
    18 ft3 of sand make 18.
    """
    plan = assess(shipped("boathouse-laid")).work
    one = next(b for b in list_batches(plan, recipe) if b.item == MORTAR)
    assert one.water / one.cement / (231 / 1728 * CUFT) == pytest.approx(gallons, abs=0.05)
    told = batch_texts([one], "feet-inches")[1]
    assert re.search(r"about [\d ]+(1/2)? ?gal water", told)


def test_a_step_that_ends_with_a_day_is_done_on_that_day():
    assert [last_day(end) for end in (0.0, 0.5, 1.0, 2.0, 2.1)] == [1, 1, 1, 2, 3]


@pytest.mark.parametrize(
    ("verdict", "people", "found"),
    [(TWO, 3, (2, False)), (HOIST, 3, (2, True)), (ONE, 3, (1, False)), (TWO, 1, (1, False))],
)
def test_two_hold_what_one_may_not_lift_alone(verdict, people, found):
    """A step of pieces alone, with nothing mixed."""
    step = SimpleNamespace(number=1, batches=0, goods=[SimpleNamespace(unit="piece")])
    plan = SimpleNamespace(people=people, lifts=[SimpleNamespace(step=1, verdict=verdict)])
    assert hands(plan, step) == found


def test_a_lift_is_told_at_its_worst_bed():
    """Of two lifts of one piece the row has what one may lift where that is less."""
    plan = assess(shipped("boathouse")).work
    one = next(lift for lift in plan.lifts if lift.weight is not None)
    two = [replace(one, allowed=kg, height=kg / 10) for kg in (20.0, 10.0)]
    (row,) = lift_texts(replace(plan, lifts=tuple(two)), "millimetres")
    assert (row[5], row[7]) == ("1 000 mm", "10 kg")


def test_papers_of_an_english_job_warn_in_english_words():
    """Neither an American law nor an American word or measure; the client's say what the table says."""
    job = assess(load(DESIGNS / "boathouse.toml"), "UK ADJ")
    plates = chart.plates(job, "millimetres", paper("millimetres", "A3"))
    said = " ".join(one.text for plate in plates for one in plate.sheet.labels)
    assert "Work at Height Regulations 2005" in said and "sleeping area" not in said
    for words in (
        *(one.what for one in cautions("UK ADJ")),
        *client_cautions("millimetres", "UK ADJ"),
    ):
        assert not re.search(
            r"\b(story|centering|framing|building official|building department|ft|lb)\b", words
        )
    told = " ".join(one.what for one in cautions("UK ADJ"))
    kept = " ".join(client_cautions("feet-inches", "UK ADJ"))
    for words in (
        "a fireguard in place",
        "within 1 m",
        "at least 3.1 m from the house",
        "a carbon monoxide alarm in the room with the fire",
    ):
        assert words in told and words in kept
    assert "building control" in kept and "building department" in client_cautions()[-1]


def test_mixes_that_one_piece_outlasts_are_counted(monkeypatch):
    def said():
        rows = rows_of_set(shipped("boathouse"), "feet-inches", 90.0)
        sheet = Sheet(200.0, 400.0)
        for row in rows:
            row.paint(sheet, 0.0, 390.0)
        return " ".join(label.text for label in sheet.labels)

    within = "each spread and covered within 12 minutes"
    assert f"{within}. Delivery" in said() and "28 mixes of refractory mortar" in said()
    real = set_rows.mixes_of_steps

    def slower(*asked):
        return tuple(replace(mix, in_time=n > 1) for n, mix in enumerate(real(*asked)))

    monkeypatch.setattr(set_rows, "mixes_of_steps", slower)
    assert f"{within}, but for 2 whose one piece takes longer. Delivery" in said()


def test_where_nothing_is_heavy_and_nobody_climbs_no_rows_are_written():
    plan = SimpleNamespace(lifts=(), staging=())
    assert lift_table(plan, "feet-inches", 90.0) == []
    assert staging_rows(plan, "feet-inches", 90.0) == []


@pytest.mark.parametrize(
    ("one", "two", "said"),
    [
        (None, None, ""),
        (None, 1.0, ""),
        (1.0, None, ""),
        (inf, 1.0, "out of reach"),
        (1.26, 0.64, "1.3, 0.6"),
    ],
)
def test_strain_is_told_for_one_and_for_two(one, two, said):
    assert indices(SimpleNamespace(index_one=one, index_two=two)) == said
