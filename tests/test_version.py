"""One version, in ``pyproject.toml``, shown by everything that leaves the house."""

import csv
import json
import re
import subprocess
import sys
import tomllib
import zipfile
from contextlib import redirect_stdout
from io import StringIO
from pathlib import Path

import ezdxf
import openpyxl
import pypdf
import pytest

import fireplace_calc
from fireplace_calc.__main__ import main
from fireplace_calc.base import resources
from fireplace_calc.base.resources import DESIGNS, example, made_by
from fireplace_calc.base.units import InputError

ROOT = Path(__file__).resolve().parent.parent
VERSION = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["version"]
NAMED = f"fireplace_calc {VERSION}"


@pytest.fixture(scope="module")
def summed_up(tmp_path_factory):
    """A folder that the command has written, and what it said."""
    folder = tmp_path_factory.mktemp("written")
    with redirect_stdout(StringIO()) as said:
        main([str(DESIGNS / "plain.toml"), "--out", str(folder)])
    return folder, said.getvalue()


@pytest.fixture(scope="module")
def written(summed_up):
    return summed_up[0]


def test_the_version_stands_once():
    assert fireplace_calc.__version__ == VERSION and made_by() == NAMED
    package = json.loads((ROOT / "fireplace_calc/jupyter/labextension/package.json").read_text())
    assert package["version"] == VERSION
    assert re.search(r"^version: (.+)$", (ROOT / "CITATION.cff").read_text(), re.M)[1] == VERSION
    newest = re.search(r"^## (\S+)", (ROOT / "CHANGELOG.md").read_text(), re.M)[1]
    assert newest == VERSION


def test_there_is_no_other_name_in_the_package():
    with pytest.raises(AttributeError, match="nonsense"):
        fireplace_calc.nonsense  # noqa: B018


@pytest.mark.parametrize("module", ["fireplace_calc", "fireplace_calc.jupyter.command"])
def test_the_command_line_tells_it(module):
    command = [sys.executable, "-m", module, "--version"]
    assert subprocess.run(command, capture_output=True, text=True).stdout == f"{NAMED}\n"


def test_the_summary_ends_with_it(summed_up):
    assert summed_up[1].splitlines()[-1] == NAMED


@pytest.mark.parametrize("name", ["takeoff.csv", "findings.csv", "draft.csv"])
def test_every_row_of_figures_carries_it(written, name):
    with (written / name).open(newline="") as file:
        rows = list(csv.DictReader(file))
    assert rows and {row["made_by"] for row in rows} == {NAMED}


def test_every_sheet_of_the_paper_set_carries_it(written):
    book = pypdf.PdfReader(written / "drawings.pdf")
    assert book.metadata.creator == NAMED
    assert all(NAMED in page.extract_text() for page in book.pages)


def test_the_order_carries_it(written):
    book = openpyxl.load_workbook(written / "order.xlsx")
    assert book.properties.creator == NAMED and NAMED in book["Order"]["A3"].value
    with zipfile.ZipFile(written / "order.xlsx") as parts:
        assert f"<Application>{NAMED}<" in parts.read("docProps/app.xml").decode()


def test_the_drawing_carries_it(written):
    """Custom properties: DXF reference, HEADER section."""
    header = ezdxf.readfile(written / "drawings.dxf").header
    assert header["$LASTSAVEDBY"] == NAMED and header.custom_vars.get("Program") == NAMED


def test_without_a_clone_the_installed_package_tells_it(monkeypatch, tmp_path):
    """As in a wheel, where no ``pyproject.toml`` stands beside the package."""
    from importlib import metadata

    monkeypatch.setattr(resources, "_TOP", tmp_path)
    monkeypatch.setattr(metadata, "version", lambda name: f"{name} of the wheel")
    resources.version.cache_clear()
    assert resources.version() == "fireplace_calc of the wheel"
    monkeypatch.undo()
    resources.version.cache_clear()
    assert resources.version() == VERSION


def test_an_example_is_found_by_name_from_any_folder(monkeypatch, tmp_path):
    monkeypatch.chdir(tmp_path)
    assert fireplace_calc.load(example("boathouse-laid")).name == "Boathouse club room, laid"


@pytest.mark.parametrize("name", ["nowhere", "", "../designs/plain", "/etc/passwd"])
def test_an_example_that_is_not_there_is_refused_with_the_names(name):
    with pytest.raises(InputError, match="boathouse, boathouse-laid, plain"):
        example(name)
