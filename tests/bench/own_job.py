"""One's own job from opening a notebook to all answers, at a person's pace. Run by hand:

``.venv/bin/python tests/bench/own_job.py [lab|voila] [pace=1] [shots=FOLDER]``

The task: a 42 in unit raised 14 in, an arch, a 12x16 liner, 24 ft, one story, 5,280 ft up. Every
button, list and box counts as an entry. ``pace=0`` goes as fast as the page answers. Target: at
most 25 entries and 3 minutes.
"""

from __future__ import annotations

import json
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))

from browser import page, server

from fireplace_calc import load

LOOK, KEY = 4.0, 0.2
"""Reading and thinking before an entry, and one letter typed. [s]"""
TASK = (
    ("What is the job called?", "Lake house"),
    ("Where is it?", "5,280 ft"),
    ("Which code?", "US IRC 2021"),
    ("How many stories", "one"),
    ("How high is the ceiling?", "9"),
    ("How large is the room?", "20 x 14"),
    ("Where does the chimney stand?", "within an outside wall"),
    ("How steep is the roof?", "8"),
    ("How far, level", "8"),
    ("Laid in brick", "laid in brick"),
    ("How wide is the opening?", "42"),
    ("How high, before it is raised", "30"),
    ("How far is the firebox raised?", "14"),
    ("Arch or straight?", "arch"),
    ("Which liner?", "12x16"),
    ("Floor to chimney top", "24 ft"),
    ("What is the face made of?", "brick"),
    ("Which mantel?", "none"),
)
CELL = (
    "from fireplace_calc import example, load\nfrom fireplace_calc.panels import panel\n"
    'panel(load(example("boathouse-laid")), jobs="kept")'
)


def notebook(path: Path) -> Path:
    """A notebook with a panel that shares the folder of jobs."""
    cell = {
        "cell_type": "code",
        "execution_count": None,
        "id": "c0",
        "metadata": {},
        "outputs": [],
        "source": CELL,
    }
    kernel = {"name": "python3", "display_name": "Python 3", "language": "python"}
    path.write_text(
        json.dumps(
            {
                "cells": [cell],
                "metadata": {"kernelspec": kernel, "fireplace": {"run_on_open": True}},
                "nbformat": 4,
                "nbformat_minor": 5,
            }
        )
    )
    return path


def answer(view, words: str, text: str, pace: float) -> None:
    """One entry, into the box or the list of a question."""
    box = view.get_by_label(words).first
    view.wait_for_timeout(pace * LOOK * 1000)
    if box.evaluate("(e) => e.tagName") == "SELECT":
        box.select_option(text)
    else:
        box.click()
        box.press_sequentially(text, delay=pace * KEY * 1000)
        box.press("Tab")


def run(kind: str, pace: float, shots: Path | None) -> int:
    """Do the task once; how it went is printed."""
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder).resolve()
        with (
            server(kind, notebook(root / "mine.ipynb"), root) as address,
            page(1280, 800) as view,
        ):
            begun = time.monotonic()
            view.goto(address)
            if kind == "lab":
                view.get_by_role("button", name="Run all cells", exact=True).click(timeout=60_000)
            start = view.get_by_role("button", name="Start mine", exact=True).first
            start.wait_for(timeout=60_000)
            opened = time.monotonic() - begun
            if shots:
                view.screenshot(path=shots / f"{kind}-asks.png")
            view.wait_for_timeout(pace * LOOK * 1000)
            start.click()
            entries = 1
            view.get_by_label(TASK[0][0]).first.wait_for(timeout=30_000)
            for number, (words, text) in enumerate(TASK):
                answer(view, words, text, pace)
                entries += 1
                if shots and number in (1, 10):
                    view.wait_for_timeout(1500)
                    view.screenshot(path=shots / f"{kind}-{number}.png")
            view.get_by_text("All answered").first.wait_for(timeout=30_000)
            spent = time.monotonic() - begun
            if shots:
                view.wait_for_timeout(1500)
                view.screenshot(path=shots / f"{kind}-done.png")
        made = load(root / "kept" / "lake-house" / "design.toml")
    inches = (made.opening.width / 0.0254, made.opening.extension / 0.0254)
    print(
        f"{kind}: {entries} entries, {spent:.0f} s of which {opened:.0f} s until it asks;"
        f" {inches[0]:g} in raised {inches[1]:g} in, {made.opening.head}, {made.flue.size},"
        f" {made.flue.sections} sections"
    )
    return int(entries > 25 or spent > 180)


if __name__ == "__main__":
    told = dict(word.split("=") for word in sys.argv[1:] if "=" in word)
    kinds = [word for word in sys.argv[1:] if "=" not in word] or ["voila"]
    place = Path(told["shots"]) if "shots" in told else None
    sys.exit(max(run(kind, float(told.get("pace", 1)), place) for kind in kinds))
