"""The paper set sheet by sheet: it can be watched, and stopped without leaving half a file."""

import pytest
from pypdf import PdfReader

from fireplace_calc import assess, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.drawing.papers.full_papers import writing


@pytest.fixture(scope="module")
def result():
    return assess(load(DATA / "designs" / "boathouse-laid.toml"))


def test_every_step_is_told_and_the_file_comes_last(result, tmp_path):
    path, seen = tmp_path / "set.pdf", []
    for done, of, name in writing(result, path):
        seen.append((done, of))
        assert path.exists() == (not name)
    of = len(PdfReader(path).pages)
    assert seen[-1] == (of, of)


def test_stopped_half_way_it_leaves_what_was_there(result, tmp_path):
    path = tmp_path / "set.pdf"
    path.write_bytes(b"the old one")
    work = writing(result, path)
    for _ in range(14):
        next(work)
    work.close()
    assert path.read_bytes() == b"the old one" and list(tmp_path.iterdir()) == [path]
