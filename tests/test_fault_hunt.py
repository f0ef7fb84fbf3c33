"""Find the fault in three books: every fault can be found, guesses are counted, and each wrong one
has its reason.
"""

import hashlib
from collections import Counter
from dataclasses import replace
from itertools import pairwise
from random import Random

import pytest
from sampled import sampled

from fireplace_calc import assess
from fireplace_calc.base.units import InputError
from fireplace_calc.lessons import (
    FAULTS,
    FaultHunt,
    checklist,
    fault_finding,
    figures,
    planted,
    unfindable,
    valid_design,
    valid_designs,
)
from fireplace_calc.lessons.classroom.class_records import ClassTask
from fireplace_calc.lessons.classroom.tickets import seed_of, ticket_of
from fireplace_calc.lessons.fault_hunt import hunting, planting
from fireplace_calc.lessons.fault_hunt.fault_books import FAULT_BOOKS, fault_book
from fireplace_calc.lessons.fault_records import Fault
from fireplace_calc.lessons.plants import by_steps
from fireplace_calc.rules import PACKS

PACKS_SEARCHED = ("US IRC 2021", "Canada NBC", "Canada Ontario", "UK ADJ")
CLASSES = [
    (1, "US IRC 2021", "0"),
    (2, "Canada NBC", "0"),
    (3, "UK ADJ", "0"),
    *(
        (level, pack, str(n))
        for n in range(1, 11)
        for level in (1, 2, 3)
        for pack in PACKS_SEARCHED
    ),
]
few = pytest.mark.parametrize("seeds", sampled([range(3), range(3, 40)], 1), ids=str)
each = pytest.mark.parametrize("pack", PACKS_SEARCHED)


@each
def test_nobody_is_asked_for_what_cannot_be_found(pack):
    """Each fault of the book is planted alone somewhere, its rule is listed, and a figure shows it."""
    assert unfindable(pack, 24) == {}
    mine = [f for f in FAULTS if set(f.rules) & set(PACKS[pack].keys)]
    assert len(mine) >= {"US": 30, "Ca": 15, "UK": 7}[pack[:2]]


def test_the_checker_tells_a_fault_that_cannot_be_found(monkeypatch):
    """One that moves nothing that is told, one that is never planted, one whose rule is not listed."""
    from fireplace_calc.lessons.fault_hunt import hunting
    from fireplace_calc.lessons.plants import set_to

    still = Fault("nothing moves", "", ("HTH-02",), lambda design, *_: None)
    hidden = Fault("hidden", "", ("FND-05",), set_to(chimney__wash="0 in"))
    unseen = Fault("unseen", "", ("ROF-03",), set_to(chimney__wash="0 in"))
    monkeypatch.setattr(hunting, "FAULTS", (still, hidden, unseen))
    monkeypatch.setattr(hunting, "figures", lambda *_: ())
    said = hunting.unfindable("US IRC 2021", 4)
    assert said == {
        "nothing moves": "None of 4 sound designs takes it alone.",
        "hidden": "Its rule is not on the list to look down.",
        "unseen": "No figure that is told shows it.",
    }


@few
@each
def test_what_is_planted_is_all_that_the_book_finds(pack, seeds):
    """Guides beside the code apart, which are not looked for."""
    guides = fault_book(pack).guides
    for seed in seeds:
        hunt = planted(seed, 1 + seed % 2, pack)
        open_ = {
            f.key
            for f in assess(hunt.design, pack).findings
            if f.verdict in ("falls short", "not checked") and f.key not in guides
        }
        assert open_ == {f.key for f in hunt.findings}, seed


@few
@each
def test_a_sound_design_breaks_nothing(pack, seeds):
    guides = fault_book(pack).guides
    for seed in seeds:
        found = assess(valid_design(seed, pack), pack).findings
        assert {f.key for f in found if f.verdict in ("falls short", "not checked")} <= set(guides)


@each
def test_guesses_are_counted_and_answered(pack):
    faults = planted(5, 2, pack)
    hunt, meant = FaultHunt(faults), [f.key for f in faults.findings]
    others = [key for _, rules in checklist(pack) for key, _ in rules if key not in meant]
    for n, key in enumerate(others[:5], 1):
        hunt, reply = hunt.guess(key)
        assert not reply.right and reply.text.startswith(f"Guess {n}. Not that one.")
        assert len(reply.text) > 60 and hunt.wrong == n and hunt.left == 2
    again, _ = hunt.guess(others[0])
    assert again == hunt, "the same guess counts once"
    for left, key in zip((1, 0), meant, strict=True):
        hunt, reply = hunt.guess(key, "millimetres")
        assert reply.right and hunt.left == left
    assert reply.text.endswith("Nothing else is broken.") and hunt.found == tuple(meant)


@each
def test_the_list_names_each_rule_once_under_its_part(pack):
    keys = [key for _, rules in checklist(pack) for key, _ in rules]
    assert len(keys) == len(set(keys)) and "Other" not in [part for part, _ in checklist(pack)]
    assert {f.key for s in range(3) for f in planted(s, 1, pack).findings} <= set(keys)


def test_books_name_rules_that_are_there():
    for book in FAULT_BOOKS:
        keys = {
            key for name, pack in PACKS.items() if name.startswith(book.start) for key in pack.keys
        }
        named = {*book.flue, *book.above, *book.chamber, *book.following, *book.guides}
        assert named <= keys, book.start


@pytest.mark.parametrize(("level", "pack", "name"), sampled(CLASSES, 3))
def test_no_fault_comes_up_more_than_twice_as_often_as_another(level, pack, name):
    """In a class of 24, which counts by its places. Where the book has more faults than are asked
    for, none comes up twice.
    """
    task = ClassTask("A class", name, ("faults",), 1, level, pack, "feet-inches", "none", "a test")
    count = Counter()
    for at in range(1, 25):
        seed = seed_of(ticket_of(name, "Ann", at), "Ann")
        dealt = planted(f"{seed}.1", level, pack, task.edition, at + 1, name)
        assert at > 2 or task.draw(seed, 1).design == dealt.design, "what a class is handed out"
        count.update(fault.name for fault in dealt.faults)
    mine = [f.name for f in FAULTS if set(f.rules) & set(PACKS[pack].keys)]
    often = [count[one] for one in mine]
    assert sum(often) == 24 * level
    assert max(often) <= max(2 * min(often), 1), count


# -- searches stay as they were drawn ---------------------------------------------------------------
def search_text(pack, edition, seeds=range(6)):
    """What is told, what is wrong, and the list to look down, as it is printed."""
    text = [str(checklist(pack, edition))]
    for seed in seeds:
        hunt = planted(seed, 1 + seed % 3, pack, edition)
        text += [*map(str, figures(hunt)), *(f.key for f in hunt.findings)]
    return "\n".join(text)


ONE_MORE = Fault("Damper set askew", "", ("FBX-01", "FBX-02", "CA-046", "UK-050"),
                 by_steps("firebox.wall", -0.5), since=planting.latest_edition() + 1)  # fmt: skip


@pytest.mark.parametrize("at", sampled([len(FAULTS) // 2, 0, len(FAULTS)], 1))
@pytest.mark.parametrize("pack", PACKS_SEARCHED[::3])
def test_a_fault_more_changes_no_search_that_was_drawn(pack, at, monkeypatch):
    """Wherever it stands on the list, whatever it takes of the random numbers; the next edition has
    it."""
    last, first = planting.latest_edition(), search_text(pack, 1)
    before = search_text(pack, last)
    assert search_text(pack, None) == before
    monkeypatch.setattr(planting, "FAULTS", (*FAULTS[:at], ONE_MORE, *FAULTS[at:]))
    assert search_text(pack, 1) == first and search_text(pack, last) == before
    assert search_text(pack, last + 1) != before and planting.latest_edition() == last + 1
    new = (planted(seed, 3, pack) for seed in range(99))
    assert next(hunt for hunt in new if ONE_MORE in hunt.faults).edition == last + 1
    forgot = replace(ONE_MORE, since=1)
    monkeypatch.setattr(planting, "FAULTS", (*FAULTS[:at], forgot, *FAULTS[at:]))
    assert search_text(pack, 1) != first, "one that bears no number of its own is found out"


def test_an_input_told_later_changes_no_search_that_was_drawn(monkeypatch):
    """A fault on an input that was not told so far: an earlier search is printed as it was."""
    pack, last = PACKS_SEARCHED[0], planting.latest_edition()
    before = search_text(pack, last)
    told = {**fault_finding.SHOWN, "Hearth": ("base.slab", *fault_finding.SHOWN["Hearth"])}
    monkeypatch.setattr(fault_finding, "SHOWN", told)
    assert search_text(pack, last) != before, "without its edition it is found out"
    monkeypatch.setattr(fault_finding, "TOLD_SINCE", {"base.slab": last + 1})
    assert search_text(pack, last) == before
    monkeypatch.setattr(planting, "FAULTS", (*FAULTS, ONE_MORE))
    assert "Hearth slab" in search_text(pack, last + 1)


def test_a_fault_is_found_by_what_its_own_edition_tells(monkeypatch):
    """Told from the fault's edition on it can be found; told after it, nobody could."""
    last = planting.latest_edition()
    sawn = Fault("Hearth sawn off beside", "", ("HTH-06", "HTH-08"), by_steps("hearth.side", -1))
    monkeypatch.setattr(fault_finding, "TOLD_SINCE", {"hearth.side": last + 1})
    monkeypatch.setattr(hunting, "FAULTS", (replace(sawn, since=last + 1),))
    assert unfindable("US IRC 2021", 8) == {}
    monkeypatch.setattr(hunting, "FAULTS", (replace(sawn, since=last),))
    assert unfindable("US IRC 2021", 8) == {sawn.name: "No figure that is told shows it."}


def test_an_edition_that_is_not_known_is_refused():
    for edition in (0, planting.latest_edition() + 1):
        with pytest.raises(InputError, match="Edition of the list of faults is"):
            planted(1, edition=edition)


def test_the_next_class_is_dealt_other_faults_and_a_student_others_each_time():
    pack, level = PACKS_SEARCHED[0], 3
    dealt = [
        [planted("7", level, pack, place=at, deal=name).faults for at in range(1, 5)]
        for name in ("one class", "the next class")
    ]
    assert all(set(mine) != set(theirs) for mine, theirs in zip(*dealt, strict=True))
    assert all(not set(mine) & set(then) for mine, then in pairwise(dealt[0]))


SEARCHES = {
    (1, "US IRC 2021"): "e9608795",
    (1, "Canada NBC"): "a1d7aabb",
    (1, "Canada Ontario"): "99b1b8e9",
    (1, "UK ADJ"): "5ee49e28",
    (2, "US IRC 2021"): "2e372e28",
    (2, "Canada NBC"): "ecd380ac",
    (2, "Canada Ontario"): "172aa5c0",
    (2, "UK ADJ"): "5d6a832e",
}
"""Digests of searches of each edition, drawn on 2026-11-29: whoever changes one on purpose says so
in CHANGELOG.
"""


@each
def test_searches_stay_as_they_were_drawn(pack):
    for edition in range(1, planting.latest_edition() + 1):
        found = hashlib.sha256(search_text(pack, edition).encode()).hexdigest()[:8]
        assert SEARCHES.get((edition, pack), found) == found, (
            f"searches of edition {edition} that were handed out no longer match: a fault needs"
            " `since`, an input in SHOWN its edition in TOLD_SINCE"
        )
        assert (edition, pack) in SEARCHES, f'add ({edition}, "{pack}"): "{found}" to SEARCHES'


STILL = Fault("nothing moves", "", ("HTH-02",), lambda design, *_: None)


@pytest.mark.parametrize(
    ("edition", "faults", "tried"), [(1, 1, 3), (1, 2, 3), (2, 1, 5), (2, 2, 5)]
)
def test_faults_that_no_design_takes_are_told_with_the_designs_that_were_tried(
    edition, faults, tried, monkeypatch
):
    """Of the second edition with those that were dealt first, then with all of them."""
    monkeypatch.setattr(planting, "FAULTS", (STILL, replace(STILL, name="nor this")))
    monkeypatch.setattr(planting, "TRIES", 3)
    monkeypatch.setattr(planting, "DEALT_TRIES", 2)
    with pytest.raises(InputError) as said:
        planted("7", faults, edition=edition)
    assert str(said.value) == (
        f"Seed '7' took no {faults} faults in {tried} designs; take another seed."
    )


def test_where_those_dealt_cannot_be_planted_others_stand_in(monkeypatch):
    """Two are dealt that nothing takes: of all of them another one is planted."""
    pack = PACKS_SEARCHED[0]
    good = next(fault for fault in FAULTS if fault.rules == ("FND-01",))
    monkeypatch.setattr(planting, "FAULTS", (STILL, good))
    monkeypatch.setattr(planting, "DEALT_TRIES", 1)
    monkeypatch.setattr(planting, "hand", lambda order, start, count: (STILL, good)[:count])
    found = planted("7", 1, pack)
    assert found.faults == (good,) and [f.key for f in found.findings] == ["FND-01"]


def test_a_design_that_cannot_be_drawn_or_is_laid_above_the_frost_is_left_out(monkeypatch):
    """And where none is left it is said."""
    sound = next(valid_designs._wanted(Random(1), fault_book("US IRC 2021"), {}))
    frozen = replace(sound, site=replace(sound.site, frost_depth=sound.base.footing_depth + 0.01))
    kept = []
    for one in ((sound,), (None, frozen, sound), (frozen,), (None,), ()):
        monkeypatch.setattr(valid_designs, "_wanted", lambda *_, one=one: iter(one))
        monkeypatch.setattr(valid_designs, "_fitted", lambda design, *_: design)
        monkeypatch.setattr(valid_designs, "broken_by", lambda *_: {})
        try:
            kept.append(valid_design(7))
        except InputError as said:
            kept.append(str(said))
    none = "Seed 7 gave no design that breaks nothing in {} draws; take another seed."
    named = replace(sound, name="Exercise 7")
    assert kept == [named, named, *[none.format(valid_designs.TRIES)] * 3]
