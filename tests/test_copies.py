"""``fireplace-workbook notebooks``: what a reader has changed is never written over."""

import pytest

from fireplace_calc.base.resources import DESIGNS, NOTEBOOKS, SETS
from fireplace_calc.jupyter.command import main


@pytest.fixture
def folder(tmp_path):
    assert main(["notebooks", str(tmp_path / "new" / "mine")]) == 0
    return tmp_path / "new" / "mine"


def test_notebooks_and_designs_are_copied_byte_for_byte(folder):
    copied = {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*.*")}
    wanted = {path.name: path.read_bytes() for path in NOTEBOOKS.glob("*.ipynb")}
    wanted |= {f"designs/{path.name}": path.read_bytes() for path in DESIGNS.glob("*.toml")}
    wanted |= {f"sets/{path.name}": path.read_bytes() for path in SETS.glob("*.toml")}
    assert copied == wanted and len(wanted) == 19


def test_a_second_time_nothing_is_done(folder, capsys):
    capsys.readouterr()
    assert main(["notebooks", str(folder)]) == 0
    assert capsys.readouterr() == (f"Written to {folder}: 0.\n", "")


def test_a_changed_file_is_left_alone_and_named_and_a_missing_one_comes_back(folder, capsys):
    changed, missing = folder / "designs" / "plain.toml", folder / "first-look.ipynb"
    changed.write_text("mine")
    missing.unlink()
    assert main(["notebooks", str(folder)]) == 1
    assert changed.read_text() == "mine" and missing.exists()
    said = capsys.readouterr()
    assert str(changed) in said.err and said.out.endswith(": 1.\n") and said.err.count("\n") == 1


@pytest.mark.parametrize("made", ["mine", "mine/designs"])
def test_a_file_where_a_folder_should_be_is_an_input_error(tmp_path, capsys, made):
    path = tmp_path / made
    path.parent.mkdir(exist_ok=True)
    path.write_text("a file")
    assert main(["notebooks", str(tmp_path / "mine")]) == 2
    assert str(path) in capsys.readouterr().err and path.read_text() == "a file"
