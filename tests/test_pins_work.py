"""Twenty whole designs: the order of work, its hours, days and lifts, against a second reckoning by hand (``tests/naive/work.py``).

There, what rests on, stands in or leans on what is seen by laying level cuts on each other with shapely. Volumes of an arch between
two floors are summed finely there and by sixteen strips here, so two arched designs agree in hours to a thousandth.
"""

import pytest
from naive.whole import NAMES, assessed, differs, naive


def loose(name: str) -> float:
    """How closely the numbers agree."""
    return 1e-3 if naive(name).s.spring < naive(name).s.head else 1e-9


@pytest.mark.parametrize("name", NAMES)
def test_what_is_built_after_what(name):
    mine, theirs = naive(name).work.steps, assessed(name).work.steps
    assert [[(p.part, p.material, p.number, p.of) for p in step.pieces] for step in mine] == [
        [(p.part, p.material, p.number, p.of) for p in step.parts] for step in theirs
    ]
    assert [step.after for step in mine] == [step.after for step in theirs]
    wanted = {
        (n, k, what): getattr(p, what)
        for n, step in enumerate(mine)
        for k, p in enumerate(step.pieces)
        for what in ("low", "high", "share", "floor")
    }
    found = {
        (n, k, what): getattr(p, what)
        for n, step in enumerate(theirs)
        for k, p in enumerate(step.parts)
        for what in ("low", "high", "share", "floor")
    }
    assert differs(wanted, found, rel=loose(name)) == {}


@pytest.mark.parametrize("name", NAMES)
def test_goods_mortar_hours_and_days_of_every_step(name):
    mine, theirs = naive(name).work.steps, assessed(name).work.steps
    numbers = ("hours", "mortar", "refractory", "batches", "batch", "floor", "start", "end", "idle")
    assert (
        differs(
            {(n, what): getattr(step, what) for n, step in enumerate(mine) for what in numbers},
            {(n, what): getattr(step, what) for n, step in enumerate(theirs) for what in numbers},
            rel=loose(name),
        )
        == {}
    )
    wanted = {
        (n, item, k): value
        for n, step in enumerate(mine)
        for item, sums in step.goods.items()
        for k, value in enumerate(sums)
    }
    found = {
        (n, need.item, k): value
        for n, step in enumerate(theirs)
        for need in step.goods
        for k, value in enumerate((need.quantity, need.volume, need.weight))
    }
    assert differs(wanted, found, rel=loose(name)) == {}
    assert [step.waits for step in mine] == [
        [(w.part, w.days, w.counts_from == "start", w.holds_up) for w in step.waits]
        for step in theirs
    ]


@pytest.mark.parametrize("name", NAMES)
def test_the_plan_as_a_whole(name):
    mine, theirs, d = naive(name).work, assessed(name).work, naive(name).d
    hours, mortar = sum(step.hours for step in mine.steps), sum(step.mortar for step in mine.steps)
    wanted = {
        "hours": hours,
        "days": hours / d.work.day,
        "calendar": mine.steps[-1].end,
        "mortar": mortar,
        "open time": mine.open_time,
        **mine.mixed(mortar),
        "people": d.work.people,
        "first fire": d.work.cure + d.work.cold_days,
        "last fire": d.work.cure + d.work.cold_days + 4,
    }
    mix, cure = theirs.mix, theirs.curing
    found = {
        "hours": theirs.hours,
        "days": theirs.days,
        "calendar": theirs.calendar,
        "mortar": theirs.mortar,
        "open time": theirs.open_time,
        "cement": mix.cement,
        "lime": mix.lime,
        "sand": mix.sand,
        "people": theirs.people,
        "first fire": cure.fires[0].day,
        "last fire": cure.fires[-1].day,
    }
    assert differs(wanted, found, rel=loose(name)) == {}
    floors = [
        (stage.level, stage.height, list(stage.steps), stage.rails) for stage in theirs.staging
    ]
    assert [floor[2:] for floor in floors] == [tuple(floor[2:]) for floor in mine.staging()]
    assert [x for floor in floors for x in floor[:2]] == pytest.approx(
        [x for floor in mine.staging() for x in floor[:2]], abs=1e-9
    )


@pytest.mark.parametrize("name", NAMES)
def test_who_lifts_what(name):
    mine, theirs = naive(name).work.lifts(), assessed(name).work.lifts
    assert [(one.step, one.item, one.verdict) for one in mine] == [
        (one.step, one.item, one.verdict) for one in theirs
    ]
    numbers = ("count", "weight", "height", "reach", "allowed")
    assert (
        differs(
            {(n, what): getattr(one, what) for n, one in enumerate(mine) for what in numbers},
            {(n, what): getattr(one, what) for n, one in enumerate(theirs) for what in numbers},
            rel=loose(name),
        )
        == {}
    )
    for one in theirs:
        if one.weight is not None and one.allowed > 0:
            assert (one.index_one, one.index_two) == pytest.approx(
                (one.weight / one.allowed, 0.75 * one.weight / one.allowed), rel=1e-9
            )


@pytest.mark.parametrize("name", NAMES)
def test_what_is_said_of_every_step(name):
    """Its name, its hold points, its cautions; which waits keep the hands idle; and the weather's band now and over the day."""
    mine, theirs, d = naive(name).work, assessed(name).work, naive(name).d
    assert [step.name for step in theirs.steps] == [mine.name(step) for step in mine.steps]
    for number, (step, told) in enumerate(zip(mine.steps, theirs.steps, strict=True), 1):
        assert told.number == number
        assert [hold.kind for hold in told.hold_points] == mine.holds(step, number), told.name
        wanted = mine.cautions(step, number)
        assert [
            line[: len(words)] for line, words in zip(told.cautions, wanted, strict=True)
        ] == wanted, told.name
        assert told.days == pytest.approx(step.hours / d.work.day, rel=loose(name))
    assert [wait.part for wait in theirs.critical] == mine.critical()
    assert theirs.while_working.case == mine.weather(d.work.air)
    assert theirs.afterwards.case == mine.weather(
        d.work.air if d.work.mean is None else d.work.mean
    )
