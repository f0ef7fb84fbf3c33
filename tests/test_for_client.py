"""What stands under an option: the assessment's own figures, counted once wherever they stand."""

import re
from dataclasses import replace
from math import log10

import pytest
from hypothesis import given, settings
from strategies import designs

from fireplace_calc import assess, change, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.design.records import Design
from fireplace_calc.panels.workbench.strip import told_strip
from fireplace_calc.report.for_client.fallen_short import short_words, shortfall
from fireplace_calc.report.for_client.under_a_picture import option_words
from fireplace_calc.report.sentences import weight
from fireplace_calc.takeoff.cost import bill, price_band, prices

FEET, METRIC = "feet-inches", "millimetres"
LAID = load(DATA / "designs" / "boathouse-laid.toml")
SHORT = "falls short"


def agrees(result, units):
    """Everything under an option against the assessment's findings, order, weight and odds."""
    said, known = option_words(result, units), prices()
    code = [f for f in result.findings if f.verdict == SHORT]
    judged = [f for f in (*result.judgement, *result.structure.findings) if f.verdict == SHORT]
    strip = told_strip(result, units, known, judged=True)["counts"]
    counted = {told["words"]: told["number"] for told in strip if told["sign"] == "✗"}
    assert list(counted.values()) == [len(code), len(judged)]
    for words, number in counted.items():
        assert f"{number} {words}" in said.headline
    assert said.headline.endswith(f"{result.counts.get('not checked', 0)} not checked")
    assert len(said.short) == sum(counted.values())
    for line, finding in zip(said.short, (*code, *judged), strict=True):
        assert line.startswith(f"{finding.title}: ")
    assert said.weight == weight(result.weight, units)
    assert result.odds.words in said.draft and result.odds.dying_words in said.draft
    found = bill(result.takeoff, known)
    low, high = (
        float(re.sub("[, ]", "", part)) for part in re.findall(r"\d[\d, ]*\d", said.price)[:2]
    )
    assert 0.8 * found.total >= low > 0.8 * found.total * 0.9
    assert 1.3 * found.total <= high < 1.3 * found.total * 1.1
    assert f"about {result.work.hours:.0f} hours" in said.without
    assert ("no price yet" in said.without) == bool(found.unpriced)


@pytest.mark.parametrize("units", [FEET, METRIC])
@pytest.mark.parametrize("name", ["boathouse", "boathouse-laid", "plain"])
def test_under_an_option_stands_what_the_assessment_says(name, units):
    agrees(assess(load(DATA / "designs" / f"{name}.toml")), units)


@given(designs())
@settings(max_examples=24, deadline=None)
def test_so_it_does_under_any_design(design):
    agrees(assess(design), FEET)


def test_five_short_are_never_called_two():
    """Two by code and three in the draft: the headline counts as many as are listed under it."""
    short = shortfall(assess(LAID))
    assert (len(short.code), len(short.draft), len(short.structure)) == (2, 3, 0)
    assert len(short.all) == 5 == len(option_words(assess(LAID)).short)
    weak = shortfall(assess(change(LAID, {"lintel.height": "1 in", "opening.width": "90 in"})))
    assert weak.structure and set(weak.structure) <= set(weak.judged)


def test_one_falls_short_and_two_fall_short():
    found = shortfall(assess(LAID))
    assert found.headline.startswith("2 fall short by code, 3 in draft and structure")
    one = replace(found, code=found.code[:1])
    assert one.headline.startswith("1 falls short by code, 3 in draft and structure")


def test_a_line_has_its_figures_in_the_readers_units():
    found = {f.key: f for f in assess(LAID).findings}
    assert short_words(found["ROF-02"]).endswith("1'-1 1/2\", at least 2'-0\"")
    assert short_words(found["ROF-02"], METRIC).endswith("343 mm, at least 610 mm")


def test_the_band_stands_on_the_lists_own_offers_where_it_has_them():
    """A list with an offer each way gives their sums; one without, the spread said beside it; in
    between each line its own. Worked by hand: 10 at 2 (1 to 4) and 5 at 8 (no offers).
    """
    rows = [replace(assess(LAID).takeoff[0], item=item, order=order, unit="piece")
            for item, order in (("A", 10.0), ("B", 5.0), ("C", 1.0))]  # fmt: skip
    one = replace(prices()["Mortar"], unit="piece", confidence="mine", currency="EUR")
    known = {
        "A": replace(one, item="A", price=2.0, low=1.0, high=4.0),
        "B": replace(one, item="B", price=8.0),
    }
    band = price_band(bill(rows, known), known)
    assert (band.low, band.high, band.currency) == (42.0, 92.0, "EUR")
    assert band.words == "42 to 92 EUR" and "offer of 1 items" in band.stands_on
    assert "20 % under to 30 % over the price list" in band.stands_on
    offered = price_band(bill(rows[:1], known), known)
    assert (offered.low, offered.high) == (10.0, 40.0) and "%" not in offered.stands_on
    assert price_band(bill(rows[2:], known), known).words == "no price yet"


def test_the_band_is_two_figures_rounded_away_from_the_middle():
    known = prices()
    for width in ("30 in", "42 in", "60 in"):
        found = bill(assess(change(LAID, {"opening.width": width})).takeoff, known)
        band = price_band(found, known)
        for end in (band.low, band.high):
            assert end % 10 ** (int(log10(end)) - 1) == pytest.approx(0)
        assert band.low <= 0.8 * found.total and band.high >= 1.3 * found.total
        assert band.invented and "invented" in band.stands_on and "at example prices" in band.words


def test_a_list_of_ones_own_may_hold_offers(tmp_path):
    path = tmp_path / "mine.csv"
    path.write_text(
        "item,unit,price,currency,per_pack,pack,confidence,low,high\nMortar,80-lb bag,12,EUR,,,mine,10,15\n"
        "Arch stone,ton,30,EUR,,,mine,,\n"
    )
    read = prices(str(path))
    assert (read["Mortar"].low, read["Mortar"].high) == (10.0, 15.0)
    assert (read["Arch stone"].low, read["Arch stone"].high) == (None, None)


@pytest.mark.parametrize(
    ("without", "said"),
    [
        ((), "."),
        (("Mortar",), "; mortar: no price yet."),
        (
            ("Common brick", "Mortar", "Steel lintel"),
            "; common brick, steel lintel, mortar: no price yet.",
        ),
        (
            ("Base block", "Common brick", "Mortar", "Steel lintel"),
            "; 4 lines of the order: no price yet.",
        ),
    ],
)
def test_up_to_three_lines_without_a_price_are_named_and_more_are_counted(without, said):
    known = {name: price for name, price in prices().items() if name not in without}
    words = option_words(assess(Design()), FEET, known).without
    assert words.startswith("Not in it: labor, about 55 hours of one mason, hardware such as")
    assert words.partition("permit and tax")[2] == said
