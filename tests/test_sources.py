"""What a reader is shown as a source: a publication by name, never an address, never papers that nobody has."""

import csv
import json
import re
import subprocess
import sys
import zipfile
from pathlib import Path

import ezdxf
import openpyxl
import pypdf
import pytest
from sampled import sampled

from fireplace_calc import PACKS, Design, assess, load
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.tables import DATA, rows, rule_sources
from fireplace_calc.rules import check_every_pack

ROOT = Path(__file__).resolve().parent.parent
READ = ROOT / "docs" / "where-it-was-read.csv"
ADDRESS = re.compile(
    r"https?:|www\.|\b[\w-]+\.(?:com|org|net|io|ru|info|biz|dev|co\.uk|gov)\b", re.I
)
NOBODYS = re.compile(r"\b(?:the|draft|handbook|reference|operating) notes\b|\bforum\b", re.I)
KNOWN = re.compile(r"\b(?:read|memory|derived|computed|invented|not seen|dash in table)\b")
SCHEMAS = re.compile(r"http://(?:schemas\.openxmlformats\.org|purl\.org|www\.w3\.org)/[\w./-]+")
"""Names that the spreadsheet's open standard asks for; they lead nowhere and nobody is shown them."""
LIBRARIES = re.compile(r"openpyxl|ezdxf|reportlab|microsoft|matplotlib|anonymous", re.I)
DESIGNS = sorted((DATA / "designs").glob("*.toml"))


def faults(text: str) -> list[str]:
    """Addresses in a text, and papers that no reader has."""
    return [found.group(0) for rule in (ADDRESS, NOBODYS) for found in rule.finditer(text)]


def test_the_test_finds_what_it_looks_for():
    for text in ("see http://a.b", "read at example.com", "by the notes", "quoted in a forum"):
        assert faults(text), text
    assert not faults("International Residential Code (ICC), R1001.10; 2015, 2018; see note b.")


@pytest.mark.parametrize("file", sorted(DATA.glob("*.csv")), ids=lambda f: f.stem)
def test_data_cites_publications(file):
    """Every row of every table has the words of its source and how well it is known."""
    assert not faults(file.read_text(encoding="utf-8"))
    for row in rows(file.name):
        assert len(row["source"]) > 5 and KNOWN.search(row["confidence"]), row
        assert "wall_source" not in row or (row["wall_source"] and row["wall_confidence"])


def test_no_other_file_of_data_or_notebooks_has_an_address():
    """Example designs, and the notebooks with what they printed."""
    for file in DESIGNS:
        assert not faults(file.read_text(encoding="utf-8")), file.name
    for file in sorted((ROOT / "notebooks").glob("*.ipynb")):
        for cell in json.loads(file.read_text(encoding="utf-8"))["cells"]:
            shown = "".join(cell["source"]) + json.dumps(cell.get("outputs", ""))
            shown = re.sub(r'"image/(?:png|svg\+xml)": "[^"]*"', "", shown)
            assert not faults(shown), (file.name, faults(shown))


def test_contributors_find_where_each_table_was_read():
    """One file, outside data/, names rows that stand in the tables, each at an address; where a
    print was read whose address nobody kept, the note says which print.
    """
    with READ.open(newline="", encoding="utf-8") as opened:
        read = list(csv.DictReader(opened))
    assert len(read) > 150
    for entry in read:
        held = {row[entry["column"]] for row in rows(entry["file"])}
        assert entry["rows"] == "all" or set(entry["rows"].split(" | ")) <= held, entry
        kept = entry["address"].startswith("http")
        assert kept or (entry["address"] == "not kept" and len(entry["note"]) > 20), entry
    assert sum(entry["address"] == "not kept" for entry in read) <= 5, "keep the address"
    told = {key for entry in read if entry["column"] == "id" for key in entry["rows"].split(" | ")}
    for key, row in rule_sources().items():
        memory = row.source.confidence == "memory"
        assert key.startswith("PRA") or (key in told) != memory, (
            f"{key}: say in {READ.name} where it was read; a row from memory was read nowhere"
        )


@pytest.mark.parametrize("pack", PACKS.values(), ids=list(PACKS))
def test_every_rule_cites_book_and_clause(pack):
    """The citation names the book in words and the clause by its number."""
    for rule in pack.rules:
        assert not faults(f"{rule.source} {rule.why} {rule.title} {rule.clause}"), rule.key
        assert len(rule.source) > 10 and rule.confidence, rule.key
        book = rule_sources()[rule.key]
        place = rule.clause.rpartition(", ")[2]
        if rule.source.startswith(book.source.text):
            assert book.section in rule.source and book.editions in rule.source
        else:
            assert rule.source.startswith(place) and "Residential" in rule.source, rule.source
            assert rule.clause.removesuffix(f", {place}") in rule.source


@pytest.mark.parametrize("file", [None, *DESIGNS], ids=lambda f: f.stem if f else "default")
def test_every_finding_cites_a_publication(file):
    """All books, the draft and the structure, over whole designs."""
    result = assess(load(file) if file else Design())
    found = [f for said in check_every_pack(result.facts).values() for f in said]
    found += [*result.judgement, *result.structure.findings]
    assert len(found) > 800
    for finding in found:
        assert not faults(" ".join(map(str, finding))), finding
        assert finding.source and finding.confidence


@pytest.fixture(scope="module", params=sampled(("US IRC 2021", "UK ADJ"), 1))
def exported(request, tmp_path_factory):
    """A folder as the command writes it."""
    folder = tmp_path_factory.mktemp("out")
    asked = [sys.executable, "-m", "fireplace_calc", str(DESIGNS[0])]
    done = subprocess.run(
        [*asked, "--out", str(folder), "--pack", request.param],
        capture_output=True,
        text=True,
        cwd=ROOT,
    )
    assert done.returncode in (0, 1), done.stderr
    assert not faults(done.stdout)
    return folder


def test_exports_show_no_address(exported):
    """Tables, drawing set, order and drawing, read back by other libraries."""
    for file in exported.glob("*.csv"):
        assert not faults(file.read_text(encoding="utf-8")), file.name
    pages = pypdf.PdfReader(exported / "drawings.pdf").pages
    assert len(pages) > 5
    for page in pages:
        assert not faults(page.extract_text())
    with zipfile.ZipFile(exported / "order.xlsx") as parts:
        for name in parts.namelist():
            assert not faults(SCHEMAS.sub("", parts.read(name).decode())), name
    assert not faults((exported / "drawings.dxf").read_text(encoding="utf-8"))


def test_exports_carry_our_name_and_no_librarys(exported):
    """Metadata read back: the program, not the library it writes with."""
    book = openpyxl.load_workbook(exported / "order.xlsx")
    assert book.properties.creator == made_by() and book.properties.title
    with zipfile.ZipFile(exported / "order.xlsx") as parts:
        program = f"<Application>{made_by()}</Application>"
        assert program in parts.read("docProps/app.xml").decode()
        for name in ("docProps/app.xml", "docProps/core.xml"):
            assert not LIBRARIES.search(parts.read(name).decode()), name
    text = (exported / "drawings.dxf").read_text(encoding="utf-8")
    assert not LIBRARIES.search(text)
    drawing = ezdxf.readfile(exported / "drawings.dxf")
    assert drawing.header["$LASTSAVEDBY"] == made_by() and not drawing.audit().has_errors
    told = pypdf.PdfReader(exported / "drawings.pdf").metadata
    assert told is not None
    for name in ("/Author", "/Creator", "/Producer"):
        assert told[name] == made_by(), name
