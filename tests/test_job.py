"""Long work in a panel: it shows how far it is, answers in between, and stops when told to."""

import asyncio

import pytest

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.panels import panel
from fireplace_calc.panels.job import Job


def counting(closed: list, of: int = 5):
    try:
        for done in range(of + 1):
            yield done, of, f"sheet {done}"
    finally:
        closed.append(done)


def test_it_runs_to_the_end_and_says_so():
    job, closed = Job("sheets"), []
    seen = []
    job.bar.observe(lambda event: seen.append(event["new"]), "value")
    job.run(lambda: counting(closed), lambda: "Done: all of it.")
    assert "Done: all of it." in job.status.value and closed == [5] and seen == [1, 2, 3, 4, 5]
    assert job.stop.disabled and job.bar.layout.visibility == "hidden"


def test_stop_is_heard_between_two_steps_and_nothing_is_finished():
    job, closed, finished = Job("sheets"), [], []

    async def reader():
        job.run(lambda: counting(closed, 1000), lambda: finished.append(1) or "")
        await asyncio.sleep(0.001)
        assert not job.stop.disabled and job.bar.layout.visibility == "visible"
        job.run(lambda: counting(closed), lambda: finished.append(2) or "")  # one thing at a time
        job.stop.click()
        await asyncio.sleep(0.01)

    asyncio.run(reader())
    assert (
        "Stopped" in job.status.value
        and finished == []
        and len(closed) == 1
        and closed[0] < 1000
        and job.stop.disabled
    )


@pytest.mark.parametrize(
    ("writes", "said"), [(True, "nothing was written"), (False, "the search was not finished")]
)
def test_a_search_that_is_stopped_does_not_speak_of_writing(writes, said):
    job = Job("steps", writes=writes)

    async def reader():
        job.run(lambda: counting([], 1000), lambda: "")
        await asyncio.sleep(0.001)
        job.stop.click()
        await asyncio.sleep(0.01)

    asyncio.run(reader())
    assert f"Stopped; {said}." in job.status.value


def test_the_folds_that_only_look_say_so():
    made = panel(Design(), folds=("remedies", "reach", "papers"))
    for name, writes in (("remedies", False), ("reach", False), ("papers", True)):
        made.open(name)
        assert ("written" in made.folds[name].job.left) == writes, name


def test_what_is_refused_is_answered_in_one_sentence():
    def refuse():
        yield 0, 1, ""
        raise InputError("Paper is 'A7', but there are only three.", "Paper", "three", "A7")

    job = Job("sheets")
    job.run(refuse, lambda: "")
    assert "A7" in job.status.value and 'role="alert"' in job.status.value


def test_a_fault_of_our_own_is_not_kept_quiet():
    def fail():
        yield 0, 1, ""
        raise ZeroDivisionError("of our own making")

    job = Job("sheets")
    with pytest.raises(ZeroDivisionError):
        job.run(fail, lambda: "")
    assert "of our own making" in job.status.value and job.stop.disabled
