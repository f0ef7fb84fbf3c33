"""A class on one server, students in browsers, kernels killed in between. Run by hand:

``.venv/bin/python tests/bench/class.py [lab|tablet] [students=30] [at_once=8] [kills=4]``

Every student answers every question of his exercises, some of them wrong first, and finds three
faults with a wrong guess before each; then the trainer gathers. Told: processor time and memory of server and kernels, time from opening to *Begin*, from
an answer to its reply; and whether anybody's work is lost or mixed.
"""

from __future__ import annotations

import contextlib
import random
import shutil
import signal
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))

import psutil
from browser import FLAGS, ROOT, chromium, server

from fireplace_calc.base.resources import made_by
from fireplace_calc.lessons import KINDS
from fireplace_calc.lessons.classroom.class_files import hand_out, kept_class
from fireplace_calc.lessons.classroom.class_records import ClassTask
from fireplace_calc.lessons.classroom.class_results import result_rows
from fireplace_calc.lessons.classroom.gathering_work import gathered


@contextlib.contextmanager
def tablet(notebook: Path, root: Path):
    """The page without code, as tablets get it."""
    command = [sys.executable, "-m", "fireplace_calc.jupyter.command", "tablet", str(notebook)]
    process = subprocess.Popen(
        [*command, "--address", "127.0.0.1"], cwd=root, stdout=subprocess.PIPE, text=True
    )
    try:
        yield next(line.strip() for line in process.stdout if line.startswith("http://"))
    finally:
        process.terminate()
        process.wait(30)


def measured() -> tuple[float, float, list[psutil.Process]]:
    """Memory [MB] and processor time [s] of servers and kernels, and the kernels."""
    memory, spent, kernels = 0.0, 0.0, []
    for one in psutil.Process().children(recursive=True):
        with contextlib.suppress(psutil.Error):
            words = " ".join(one.cmdline())
            if "python" in words and "playwright" not in words:
                memory += one.memory_full_info().uss / 1e6
                spent += sum(one.cpu_times()[:2])
                if "ipykernel" in words:
                    kernels.append(one)
    return memory, spent, kernels


class Student:
    """One student in a browser of his own."""

    def __init__(self, browser, name: str, ticket: str) -> None:
        self.name, self.ticket = name, ticket
        self.view = browser.new_context(viewport={"width": 1024, "height": 768}).new_page()

    def open(self, address: str) -> float:
        """Open the page and begin; how long it took. [s]"""
        begun = time.monotonic()
        self.view.goto(address, timeout=180_000)
        self.view.get_by_label("Ticket").wait_for(timeout=180_000)
        self.view.get_by_label("Name").fill(self.name)
        self.view.get_by_label("Ticket").fill(self.ticket)
        self.view.get_by_role("button", name="Begin").click()
        self.view.get_by_text(f"{self.name}: ").wait_for(timeout=60_000)
        return time.monotonic() - begun

    def choose(self, number: int) -> None:
        """Take one exercise."""
        self.view.get_by_label("Exercise").select_option(index=number - 1)
        self.view.locator(".fireplace-lesson .why").first.wait_for()
        self.view.wait_for_timeout(300)

    def guess(self, rule: str, number: int) -> float:
        """Name a rule of a search as guess of this number; how long the reply took. [s]"""
        self.view.get_by_label("Answer a").select_option(rule)
        begun = time.monotonic()
        self.view.get_by_role("button", name="Check my answer").click()
        self.view.get_by_text(f"Guess {number}. ").first.wait_for(timeout=30_000)
        return time.monotonic() - begun

    def answer(self, mark: str, text: str, options: bool, right: bool) -> float:
        """Answer one question; how long the reply took. [s]"""
        questions = self.view.locator(".widget-toggle-buttons button:visible")
        if questions.count():
            questions.nth("abcdefgh".index(mark)).click()
        box = self.view.get_by_label(f"Answer {mark}")
        begun = time.monotonic()
        if options:
            box.select_option(text)
        else:
            box.fill(text)
            box.press("Enter")
        kind = "right" if right else "wrong"
        self.view.locator(f".reply.{kind}:visible").first.wait_for(timeout=30_000)
        return time.monotonic() - begun


def play(kind: str, many: int, at_once: int, kills: int) -> int:
    """The whole class; 0 when nothing was lost or mixed."""
    from playwright.sync_api import sync_playwright

    rng = random.Random(7)
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder).resolve()
        notebook = root / "class-student.ipynb"
        shutil.copy(ROOT / "notebooks" / notebook.name, notebook)
        topics = (*tuple(KINDS)[:2], "faults")
        task = ClassTask(
            "Invented", "k", topics, 3, 3, "US IRC 2021", "feet-inches", "hints", made_by()
        )
        names = tuple(f"Student {n}" for n in range(1, many + 1))
        school = kept_class(root / "class", task, names)
        hand_out(root / "students", task)
        serving = tablet(notebook, root) if kind == "tablet" else server("lab", notebook, root)
        wanted, guesses = {name: [] for name in names}, dict.fromkeys(names, 0)
        opening, replying, most = [], [], 0.0
        with serving as address, sync_playwright() as playing:
            browser = playing.chromium.launch(executable_path=chromium(), args=FLAGS)
            for first in range(0, many, at_once):
                group = [
                    Student(browser, name, school.tickets[name])
                    for name in names[first : first + at_once]
                ]
                opening += [one.open(address) for one in group]
                for number in range(1, task.count + 1):
                    for one in group:
                        one.choose(number)
                    drawn = {one.name: task.draw(school.seed(one.name), number) for one in group}
                    steps = {name: one.steps for name, one in drawn.items()}
                    for n in range(max(map(len, steps.values()))):
                        for one in group:
                            if n >= len(steps[one.name]):
                                continue
                            step, mark = steps[one.name][n], "abcdefgh"[n]
                            if drawn[one.name].any_order:
                                told = step.mistakes[n], step.answer(task.units)
                                for text in (step.options[round(told[0].value)], told[1]):
                                    guesses[one.name] += 1
                                    replying.append(one.guess(text, guesses[one.name]))
                                    wanted[one.name].append(text)
                                continue
                            if not step.options and rng.random() < 0.4:
                                wrong = f"{rng.randrange(10**5, 10**6)}"
                                replying.append(one.answer(mark, wrong, False, False))
                                wanted[one.name].append(wrong)
                            answer = step.answer(task.units)
                            replying.append(one.answer(mark, answer, bool(step.options), True))
                            wanted[one.name].append(answer)
                    memory, spent, kernels = measured()
                    most = max(most, memory)
                    if kills and number == 2 and kernels:
                        kills -= 1
                        rng.choice(kernels).send_signal(signal.SIGKILL)
                        time.sleep(3)
                        opening += [one.open(address) for one in group]
                for one in group:
                    one.view.context.close()
            browser.close()
        found = gathered(school, (root / "students", root / "visitors"))
        lost = [
            name
            for name in names
            if [one.text for one in found.works[name].attempts] != wanted[name]
        ]
        rows = list(result_rows(school, found.works))
        done = sum(row.stands.done for row in rows)
    print(
        f"{kind}: {many} students, {at_once} at once, {sum(map(len, wanted.values()))} answers,"
        f" {len(lost)} lost or mixed {lost}, {done} of {len(rows)} questions right; to begin"
        f" {statistics.median(opening):.1f} s (most {max(opening):.1f}), a reply"
        f" {statistics.median(replying) * 1000:.0f} ms (most {max(replying) * 1000:.0f}); server and"
        f" kernels at most {most:.0f} MB, {spent:.0f} s of processor at the end"
    )
    return int(bool(lost) or done != len(rows))


if __name__ == "__main__":
    told = dict(word.split("=") for word in sys.argv[1:] if "=" in word)
    kinds = [word for word in sys.argv[1:] if "=" not in word] or ["tablet"]
    count, together = int(told.get("students", 30)), int(told.get("at_once", 8))
    sys.exit(max(play(kind, count, together, int(told.get("kills", 4))) for kind in kinds))
