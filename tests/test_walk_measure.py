"""A mason enters his set from a sheet of forty measured pieces, by keyboard alone, in a browser."""

import os

import pytest
from bench.browser import chromium, page, server
from measured_sheet import HEAD, rows
from test_browser import write_notebook
from test_walks import EVERY, faults

from fireplace_calc import change, load
from fireplace_calc.base.resources import example
from fireplace_calc.base.units import INCH
from fireplace_calc.drawing import single
from fireplace_calc.geometry.assembled.solids import piece_volume
from fireplace_calc.geometry.builder import build_geometry
from fireplace_calc.pieces.set_text import read_set

REQUIRED = "FIREPLACE_BROWSER_TEST"
CELL = (
    "from fireplace_calc.panels.measuring.measure_set import MeasureSet\nMeasureSet('own-set.toml')"
)
FIELDS = """() => [...document.querySelectorAll('.measuring-field')].map((box) => {
  const put = box.querySelector('input, select');
  return [put.id.split('-')[2], put.value, [...(put.options || [])].map((o) => o.value),
    put === document.activeElement];
})"""
KEYS_A_SECOND, THOUGHT = 2.0, 2.0
"""How fast a hand types that looks for its keys, and how long it looks at the sheet for a field."""


class Mason:
    """Somebody with a sheet and a keyboard, who counts what he presses."""

    def __init__(self, view):
        self.view, self.keys, self.looked = view, 0, 0

    def press(self, key, times=1):
        for _ in range(times):
            self.view.keyboard.press(key)
            self.keys += 1

    def type(self, text):
        self.view.keyboard.type(text)
        self.keys += len(text)

    def fields(self):
        return {key: (value, options, at) for key, value, options, at in self.view.evaluate(FIELDS)}

    def at(self):
        return next(key for key, (_, _, here) in self.fields().items() if here)

    def title(self):
        return self.view.locator(".measuring h3").inner_text()

    def comes_to(self, title):
        self.view.wait_for_function(
            "([t]) => document.querySelector('.measuring h3').textContent === t", arg=[title]
        )
        self.settled()

    def settled(self):
        """Everything sent has been answered: what is shown is what was typed."""
        self.view.locator(".measuring[aria-busy=false]").wait_for(timeout=60_000)

    def fill(self, wanted, key):
        """One field: look at the sheet, type what differs, go on."""
        self.looked += 1
        value, options, _ = self.fields()[key]
        if value != wanted:
            if options:
                steps = options.index(wanted) - options.index(value)
                self.press("ArrowDown" if steps > 0 else "ArrowUp", abs(steps))
            elif wanted:
                self.type(wanted)
            else:
                self.press("Delete")

    def differ(self, told, fields, after):
        """Fields from there on that are not yet as the sheet has them."""
        keys = list(fields)
        return [k for k in keys[keys.index(after) :] if fields[k][0] != told.get(k, "")]

    def piece(self, row):
        """A row of the sheet; where the rest is as it was on the last piece, the piece is done."""
        before = self.title()
        if row["mirror"]:
            self.looked += 1
            self.press("/")
        else:
            while True:
                key = self.at()
                self.fill(row[key], key)
                fields = self.fields()
                left = self.differ(row, fields, key)
                if not [k for k in left if k != key]:
                    break
                self.press("Enter")
                if key in ("role", "form"):  # other fields may come
                    self.settled()
            if row["bed"]:
                self.looked += 1
                self.more("bed", row["bed"])
            self.press("Control+Enter")
        number = int(before.split()[1])
        self.comes_to(f"Piece {number + 1}")

    def more(self, key, text):
        """A field that is seldom told, behind its button."""
        for _ in range(40):
            if self.view.evaluate("document.activeElement.textContent") == "More fields":
                break
            self.press("Tab")
        self.press("Enter")
        self.settled()
        while self.at() != key:
            self.press("Enter")
        self.type(text)

    def seconds(self):
        return self.keys / KEYS_A_SECOND + THOUGHT * self.looked


def hasty(mason):
    """A hand that does not wait: the mark of the next piece is typed before its page has come."""
    number = int(mason.title().split()[1])
    mason.press("/")
    mason.type("W2B")
    mason.press("Enter")
    mason.comes_to(f"Piece {number + 1}")
    assert mason.fields()["mark"][0] == "W2B" and mason.at() == "role"
    marks = mason.view.locator(".measuring-table tbody button").all_inner_texts()
    assert marks[-2:] == ["W2L", "W2B"]
    # What is missing is gone to, and the mark that was typed ahead does no harm.
    while mason.at() != "C":
        mason.press("Enter")
    mason.press("Delete")
    mason.press("Control+Enter")
    mason.type("W9")
    mason.settled()
    assert mason.at() == "C" and mason.fields()["mark"][0] == "W2B"
    wrong = mason.view.locator(".measuring-wrong").all_inner_texts()
    assert "C: height is missing." in wrong


@pytest.mark.parametrize(
    ("kind", "count"), [("lab", 40), ("voila", 6)] if EVERY else [("voila", 6)]
)
def test_pieces_are_entered_by_keyboard_alone(kind, count, tmp_path, monkeypatch):
    """The first few in Voila; by hand, with ``KINDS=all``, all forty in JupyterLab, to a design that is
    drawn from the set.
    """
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", (
            "no Chromium, but this run must not do without the browser test"
        )
        pytest.skip("no Chromium on this machine: the browser test is left out")
    root = tmp_path.resolve()
    write_notebook(root / "own.ipynb", [CELL])
    with server(kind, root / "own.ipynb", root) as address, page() as view:
        failed = []
        view.on("pageerror", lambda error: failed.append(str(error)))
        view.goto(address, timeout=120_000)
        if kind == "lab":  # not one of the supplied notebooks: it asks
            view.get_by_role("button", name="Run all cells", exact=True).click(timeout=60_000)
        view.locator(".measuring .measuring-fields").first.wait_for(timeout=120_000)
        mason = Mason(view)
        view.locator(".measuring-field input").first.focus()  # where Tab from the top leads
        for key, text in {"name": "", "unit": "", **HEAD}.items():
            while mason.at() != key:
                mason.looked += 1
                mason.press("Enter")
            mason.fill(text, key)
        mason.press("Control+Enter")
        mason.comes_to("Piece 1")
        told = rows()[:count]
        for row in told:
            mason.piece(row)
        assert faults(view) == []
        said = view.locator(".measuring-misfits li").all_inner_texts()
        states = view.locator(".measuring-table tbody td:last-child").all_inner_texts()
        assert states == ["ok"] * count
        made = read_set((root / "own-set.toml").read_text())
        assert len(made.pieces) == count
        if count < len(rows()):
            hasty(mason)
        assert failed == []
    for row in told:
        volume = piece_volume(made.piece(row["mark"])) / INCH**3
        assert volume == pytest.approx(float(row["volume"]), abs=0.006), row["mark"]
    if count < len(rows()):
        assert said[0].startswith("Not on the sheet yet: ")
        return
    minutes = mason.seconds() / 60
    print(f"{mason.keys} key presses, {mason.looked} looks at the sheet: {minutes:.1f} minutes")
    assert minutes < 15 and said == ["Everything meets."]
    monkeypatch.chdir(root)
    design = change(load(example("boathouse-laid")), {"pieces.set": "own-set"})
    drawn = single("front", build_geometry(design))
    assert len(design.piece_set.pieces) == 40 and drawn.lines and drawn.labels
