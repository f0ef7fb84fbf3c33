"""The cards of a set on paper."""

import pytest
from pypdf import PdfReader

from fireplace_calc import change
from fireplace_calc.base.units import MILLIMETRES, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.drawing.papers.setting_cards import print_cards


def test_every_step_is_a_page_that_names_its_piece_and_the_caution(tmp_path):
    small = change(Design(), {"pieces.set": "small", "flue.sections": 10})
    pages = print_cards(small, tmp_path / "cards.pdf", MILLIMETRES)
    read = [page.extract_text() for page in PdfReader(tmp_path / "cards.pdf").pages]
    assert len(read) == pages
    assert "base plate" in read[0]
    assert "F8.10" in read[-1]
    assert all("not permission" in text and f"of {pages}" in text for text in read)


def test_no_set_no_cards(tmp_path):
    with pytest.raises(InputError, match="no cards to print"):
        print_cards(Design(), tmp_path / "cards.pdf")
    assert not (tmp_path / "cards.pdf").exists()


def test_a_folder_that_is_not_there_is_said(tmp_path):
    small = change(Design(), {"pieces.set": "small"})
    with pytest.raises(InputError):
        print_cards(small, tmp_path / "nowhere" / "cards.pdf")
