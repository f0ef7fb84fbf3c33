"""The main job without a screen, run as people run it."""

import csv
import os
import subprocess
import sys

import pytest
from sampled import sampled

from fireplace_calc import assess, change, load, save
from fireplace_calc.__main__ import main
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import INCH
from fireplace_calc.report.csv_files import FINDING_COLUMNS, TAKEOFF_COLUMNS, write_csv

BOATHOUSE = DATA / "designs" / "boathouse-laid.toml"
FROM_A_SET = DATA / "designs" / "boathouse.toml"


def run(*arguments, **options):
    command = [sys.executable, "-m", "fireplace_calc", *map(str, arguments)]
    return subprocess.run(command, capture_output=True, text=True, **options)


@pytest.fixture(scope="module")
def cured(tmp_path_factory):
    """The boathouse with what falls short put right."""
    design = load(BOATHOUSE)
    path = tmp_path_factory.mktemp("designs") / "cured.toml"
    trim = [{"name": "slim step", "distance": "9 in", "projection": "1 in"}]
    save(change(design, {"flue.sections": 22, "surround.trim": trim}), path)
    return path


@pytest.mark.parametrize(("design", "short"), sampled([(BOATHOUSE, 2), (FROM_A_SET, 3)], 1))
def test_the_boathouse_on_the_command_line(tmp_path, design, short):
    """Files, summary and status 1, because something falls short; the folder is made."""
    out = tmp_path / "new" / "folder"
    done = run(design, "--out", out)
    assert done.returncode == 1 and done.stderr == ""
    assert sorted(os.listdir(out)) == [
        "draft.csv",
        "drawings.dxf",
        "drawings.pdf",
        "findings.csv",
        "order.xlsx",
        "takeoff.csv",
    ]
    assert (out / "drawings.pdf").read_bytes().startswith(b"%PDF-") and (
        out / "drawings.pdf"
    ).stat().st_size > 10_000
    result = assess(load(design))
    with (out / "takeoff.csv").open(newline="") as file:
        lines = list(csv.DictReader(file))
    assert tuple(lines[0]) == (*TAKEOFF_COLUMNS, "made_by")
    assert [(line["item"], float(line["order"]), line["unit"]) for line in lines] == [
        (r.item, r.order, r.unit) for r in result.takeoff
    ]
    assert [float(line["weight_kg"]) for line in lines] == [
        pytest.approx(r.weight_kg) for r in result.takeoff
    ]
    with (out / "findings.csv").open(newline="") as file:
        lines = list(csv.DictReader(file))
    assert tuple(lines[0]) == (*FINDING_COLUMNS, "made_by")
    assert [(line["key"], line["verdict"]) for line in lines] == [
        (f.key, f.verdict) for f in result.findings
    ]
    assert (
        "Boathouse club room" in done.stdout
        and f"{short} fall short" in done.stdout
        and "ROF-02" in done.stdout
    )


def test_nothing_short_is_status_nought(cured, tmp_path, capsys):
    assert main([str(cured), "--out", str(tmp_path)]) == 0
    assert "0 fall short" in capsys.readouterr().out


def test_units_and_pack_are_the_readers(cured, tmp_path, capsys):
    assert main(
        [str(cured), "--out", str(tmp_path), "--units", "millimetres", "--pack", "US IRC 2024"]
    ) in (0, 1)
    said = capsys.readouterr().out
    assert "1067 mm wide" in said.replace("1 067", "1067") and "US IRC 2024" in said


def test_drawings_follow_the_design(cured, tmp_path):
    """Another design, another drawing; the same design again, as many pages."""
    main([str(cured), "--out", str(tmp_path / "a")])
    main([str(BOATHOUSE), "--out", str(tmp_path / "b")])
    assert (tmp_path / "a" / "drawings.pdf").read_bytes() != (
        tmp_path / "b" / "drawings.pdf"
    ).read_bytes()


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ('[opening]\nwidth = "12 ft"\n', ["opening.width", "12 ft"]),
        ("[opening]\nwidth = 42\n", ["opening.width", "no unit"]),
        ("[[[\n", ["TOML", "line 1"]),
    ],
)
def test_a_wrong_file_is_status_two_and_one_sentence(tmp_path, capsys, text, says):
    path = tmp_path / "wrong.toml"
    path.write_text(text)
    assert main([str(path), "--out", str(tmp_path / "out")]) == 2
    told = capsys.readouterr()
    assert told.out == "" and told.err.count("\n") == 1
    for words in (str(path), *says):
        assert words in told.err
    assert not (tmp_path / "out").exists()


def test_a_missing_file_is_status_two(tmp_path):
    done = run(tmp_path / "absent.toml", "--out", tmp_path)
    assert done.returncode == 2 and done.stdout == ""
    assert "absent.toml" in done.stderr and done.stderr.count("\n") == 1


@pytest.mark.parametrize(
    "arguments",
    [
        [BOATHOUSE],
        ["--out", "somewhere"],
        [BOATHOUSE, "--out"],
        [BOATHOUSE, "--out", "x", "--colour", "blue"],
    ],
)
def test_a_wrong_command_is_status_two_and_one_line(arguments, tmp_path):
    done = run(*arguments, cwd=tmp_path, env={**os.environ, "PYTHONPATH": str(DATA.parent)})
    assert done.returncode == 2 and done.stdout == "" and done.stderr.count("\n") == 1
    assert os.listdir(tmp_path) == []


def test_an_unknown_pack_or_unit_is_status_two(tmp_path, capsys):
    assert main([str(BOATHOUSE), "--out", str(tmp_path), "--pack", "US IRC 1897"]) == 2
    assert "US IRC 2021" in capsys.readouterr().err
    assert main([str(BOATHOUSE), "--out", str(tmp_path), "--units", "cubits"]) == 2
    assert "millimetres" in capsys.readouterr().err
    assert os.listdir(tmp_path) == []


def test_a_folder_that_cannot_be_is_status_two(tmp_path, capsys):
    (tmp_path / "file").write_text("in the way")
    assert main([str(BOATHOUSE), "--out", str(tmp_path / "file")]) == 2
    assert main([str(BOATHOUSE), "--out", str(tmp_path / "file" / "under")]) == 2
    assert capsys.readouterr().err.count("\n") == 2


@pytest.mark.parametrize("name", ["drawings.pdf", "takeoff.csv", "findings.csv", "draft.csv"])
def test_a_file_that_cannot_be_written_is_status_two(tmp_path, capsys, name):
    (tmp_path / name / "in the way").mkdir(parents=True)
    assert main([str(BOATHOUSE), "--out", str(tmp_path)]) == 2
    told = capsys.readouterr()
    assert told.out == "" and name in told.err and told.err.count("\n") == 1
    assert not [left for left in os.listdir(tmp_path) if left.endswith(".tmp")]


@pytest.mark.whole
def test_a_reader_who_stops_early_changes_nothing(tmp_path):
    command = [sys.executable, "-m", "fireplace_calc", str(BOATHOUSE), "--out", str(tmp_path)]
    running = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    running.stdout.close()
    assert running.stderr.read() == b"" and running.wait() == 1
    running.stderr.close()


@pytest.mark.skipif(
    not hasattr(os, "geteuid") or os.geteuid() == 0, reason="the superuser may write anywhere"
)
def test_a_folder_nobody_may_write_in_is_status_two(tmp_path, capsys):
    tmp_path.chmod(0o500)
    assert main([str(BOATHOUSE), "--out", str(tmp_path)]) == 2
    assert "cannot be written" in capsys.readouterr().err


def test_a_name_that_looks_like_a_formula_stays_text(tmp_path):
    """A spreadsheet must not run what stands in a design file."""
    trim = [{"name": "=HYPERLINK(1)", "distance": "9 in", "projection": f"{1.5 * INCH} m"}]
    write_csv(assess(change(load(BOATHOUSE), {"surround.trim": trim})), tmp_path)
    with (tmp_path / "findings.csv").open(newline="") as file:
        cells = [cell for line in csv.reader(file) for cell in line]
    assert any("HYPERLINK" in cell for cell in cells)
    assert not any(cell.startswith(("=", "+", "@")) for cell in cells)


def test_help_says_what_the_statuses_mean(capsys):
    with pytest.raises(SystemExit) as left:
        main(["--help"])
    assert left.value.code == 0 and "Exit status" in capsys.readouterr().out


def test_paper_and_price_list_are_the_readers(tmp_path, capsys):
    """A3, and a list of one's own in which everything costs nothing but one item."""
    from openpyxl import load_workbook
    from pypdf import PdfReader

    listed = tmp_path / "mine.csv"
    item = assess(load(BOATHOUSE)).takeoff[0]
    listed.write_text(
        f"item,unit,price,currency,per_pack,pack,confidence\n{item.item},{item.unit},7.5,crown,,,quoted\n"
    )
    main([str(BOATHOUSE), "--out", str(tmp_path / "out"), "--paper", "A3", "--prices", str(listed)])
    box = PdfReader(tmp_path / "out" / "drawings.pdf").pages[0].mediabox
    assert [round(float(side) / 72 * 25.4) for side in (box.width, box.height)] == [420, 297]
    book = load_workbook(tmp_path / "out" / "order.xlsx")
    held = {cell.value for sheet in book for row in sheet.iter_rows() for cell in row}
    assert 7.5 in held and "crown" in " ".join(map(str, held))
    capsys.readouterr()
    for wrong, words in (
        (("--paper", "A5"), "letter, 11x17, A4, A3"),
        (("--prices", str(tmp_path / "none.csv")), "none.csv"),
    ):
        folder = tmp_path / wrong[0].strip("-")
        assert main([str(BOATHOUSE), "--out", str(folder), *wrong]) == 2
        assert words in capsys.readouterr().err and not folder.exists(), (
            "refused before anything is written"
        )


@pytest.mark.parametrize("folder", ["", " "])
def test_no_folder_is_not_this_folder(folder, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert main([str(BOATHOUSE), "--out", folder]) == 2
    assert '--out is ""' in capsys.readouterr().err and list(tmp_path.iterdir()) == []


def test_what_a_client_is_given_is_written_where_one_is_named(tmp_path, monkeypatch):
    """With the names on it and the list that was told; without one there is no such file."""
    from fireplace_calc.drawing.client_pages import page_plan
    from fireplace_calc.exports import one_file
    from fireplace_calc.scene.still import light_dots

    monkeypatch.setattr(page_plan, "DOTS", 0.4)
    monkeypatch.setattr(light_dots, "SHADOW", 30)
    monkeypatch.setattr(
        one_file.room_to_turn, "__defaults__", (None, "feet-inches", (60, 40), None)
    )
    design = str(DATA / "designs" / "plain.toml")
    main([design, "--out", str(tmp_path / "without")])
    assert not list((tmp_path / "without").glob("for-the-client.*"))
    main([design, "--out", str(tmp_path), "--client", "A. Client", "--designer", "Oak Hearths"])
    kinds = {path.suffix: path for path in tmp_path.glob("for-the-client.*")}
    assert set(kinds) == {".pdf", ".png", ".html"}
    page = kinds[".html"].read_text()
    assert "for A. Client" in page and "Oak Hearths" in page
