"""Find the fault in three books: every fault can be found, guesses are counted, and each wrong one
has its reason.
"""

import pytest
from sampled import sampled

from fireplace_calc import assess
from fireplace_calc.lessons import FAULTS, FaultHunt, checklist, planted, unfindable, valid_design
from fireplace_calc.lessons.fault_hunt.fault_books import FAULT_BOOKS, fault_book
from fireplace_calc.lessons.fault_records import Fault
from fireplace_calc.rules import PACKS

PACKS_SEARCHED = ("US IRC 2021", "Canada NBC", "Canada Ontario", "UK ADJ")
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
