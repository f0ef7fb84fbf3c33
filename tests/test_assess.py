"""The whole of it: one call, one frozen record, quick enough to follow a slider."""

import dataclasses
import subprocess
import sys
import textwrap

import pytest
from hypothesis import HealthCheck, given, settings
from strategies import designs

from fireplace_calc import PACKS, Design, InputError, assess, change, load
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import INCH, SYSTEMS
from fireplace_calc.report.plain_summary import summary
from fireplace_calc.report.sentences import CAUTION, compared, quantity, sentence
from fireplace_calc.report.tables import findings_table, levels_table, parts_table, takeoff_table
from fireplace_calc.rules import Finding

BOATHOUSE = load(DATA / "designs" / "boathouse-laid.toml")
VERDICTS = {"meets", "falls short", "does not apply", "not checked"}


def test_the_public_face():
    """Every name other people's scripts use, and what it gives."""
    trial = change(
        BOATHOUSE, {"opening.width": "48 in", "opening.extension": "8 in", "flue.sections": 24}
    )
    result = assess(trial)
    assert result.pack == "US IRC 2021" and result.pack in PACKS
    assert assess(trial, pack="US IRC 2021") == result
    for f in result.findings:
        assert f.verdict in VERDICTS
        for name in ("key", "clause", "title", "unit", "why", "confidence"):
            assert isinstance(getattr(f, name), str)
        assert hasattr(f, "provided") and hasattr(f, "required") and hasattr(f, "margin")
    for row in result.takeoff:
        assert (
            row.item
            and row.material
            and row.unit
            and row.net > 0
            and row.order > 0
            and row.weight_kg >= 0
        )
    assert result.levels["opening top"] - result.levels["hearth"] == pytest.approx(38 * INCH)
    assert {p.name for p in result.parts} >= {"footing", "firebox lining", "flue liner", "crown"}
    assert all(p.material and p.volume > 0 for p in result.parts)


def test_an_assessment_is_frozen():
    with pytest.raises(dataclasses.FrozenInstanceError):
        assess(Design()).pack = "another"


def test_counts_and_weight():
    result = assess(BOATHOUSE)
    assert sum(result.counts.values()) == len(result.findings)
    for verdict in VERDICTS:
        assert result.counts.get(verdict, 0) == sum(f.verdict == verdict for f in result.findings)
    assert result.weight == pytest.approx(sum(r.weight_kg for r in result.takeoff))


def test_an_unknown_pack_is_said_with_the_packs_there_are():
    with pytest.raises(InputError) as caught:
        assess(Design(), pack="US IRC 1897")
    assert "US IRC 1897" in str(caught.value) and "US IRC 2021" in str(caught.value)


@pytest.mark.parametrize("pack", PACKS)
def test_every_pack_answers_every_rule(pack):
    result = assess(BOATHOUSE, pack)
    assert {f.key for f in result.findings} == set(PACKS[pack].keys)


# -- the example --------------------------------------------------------------------------------------


def test_the_boathouse_says_that_it_is_invented():
    text = (DATA / "designs" / "boathouse-laid.toml").read_text()
    assert "invented" in text.split("\n\n")[0].lower()
    assert "invented" in BOATHOUSE.note.lower() and "invented" in BOATHOUSE.site.place.lower()
    assert BOATHOUSE.method == "modular" and BOATHOUSE.opening.extension > 0


def test_the_boathouse_shows_every_verdict():
    """Two things fall short, a few nobody has looked at, most meet; as the head of the file says."""
    result = assess(BOATHOUSE)
    assert {f.key for f in result.findings if f.verdict == "falls short"} == {"ROF-02", "CLR-08"}
    assert {f.key for f in result.findings if f.verdict == "not checked"} == {
        "AIR-10",
        "CLR-03",
        "FND-09",
        "HTH-01",
        "THR-03",
    }
    assert result.counts["meets"] > 30
    assert result.geometry.frame.adjusted == ()


def test_one_more_flue_section_and_a_slimmer_step_cure_the_boathouse():
    lower, shelf = BOATHOUSE.surround.trim
    slim = dataclasses.replace(lower, projection=lower.distance / 8)
    cured = change(
        BOATHOUSE, {"flue.sections": BOATHOUSE.flue.sections + 1, "surround.trim": [slim, shelf]}
    )
    assert "falls short" not in assess(cured).counts


@pytest.mark.parametrize("width", [18, 24, 30, 42, 60, 96])
@pytest.mark.parametrize("extension", [0, 6, 24])
@pytest.mark.parametrize("sections", [4, 20, 40])
def test_the_boathouse_stands_at_every_end_of_its_sliders(width, extension, sections):
    trial = change(
        BOATHOUSE,
        {
            "opening.width": f"{width} in",
            "opening.extension": f"{extension} in",
            "flue.sections": sections,
        },
    )
    result = assess(trial)
    assert sum(p.volume for p in result.parts) == pytest.approx(
        sum(r.volume for r in result.takeoff if not r.item.startswith("Mantel"))
    )


def test_the_plain_design_is_the_default():
    assert load(DATA / "designs" / "plain.toml") == change(Design(), {"method": "laid"})


# -- tables and sentences -------------------------------------------------------------------------------


@settings(deadline=None, max_examples=25, suppress_health_check=list(HealthCheck))
@given(designs())
def test_anything_that_can_be_drawn_can_be_told(design):
    result = assess(design)
    for units in SYSTEMS:
        text = summary(result, units)
        assert all(len(line) <= 100 for line in text.splitlines())
        assert all(r.item in text for r in result.takeoff)
        for finding in result.findings:
            assert finding.verdict != "falls short" or finding.title in text.replace("\n  ", " ")


def test_tables_have_a_line_each():
    result = assess(BOATHOUSE)
    assert len(findings_table(result)) == len(result.findings)
    assert len(takeoff_table(result)) == len(result.takeoff)
    assert len(parts_table(result)) == len(result.parts)
    levels = levels_table(result)
    assert list(levels["Level"])[0] == "Flue top" and len(levels) == len(result.levels)
    said = {
        verdict.removesuffix(", on an assumption") for verdict in findings_table(result)["Verdict"]
    }
    assert said <= VERDICTS


def test_a_verdict_has_a_sign_and_a_word():
    table = findings_table(assess(BOATHOUSE))
    assert set(zip(table[""], table["Verdict"], strict=True)) == {
        ("✗", "falls short"),
        ("?", "not checked"),
        ("✓", "meets"),
        ("(✓)", "meets, on an assumption"),
        ("–", "does not apply"),
        ("(–)", "does not apply, on an assumption"),
    }


def test_units_are_the_readers():
    result = assess(BOATHOUSE)
    short = next(f for f in result.findings if f.key == "CLR-08")
    assert compared(short, "feet-inches") == ('1 1/2"', 'at most 1 1/8"', '-3/8"')
    assert compared(short, "millimetres") == ("38 mm", "at most 29 mm", "-10 mm")
    assert '3/8" too much' in sentence(short)
    footing = next(r for r in result.takeoff if r.item == "Footing concrete")
    assert quantity(footing.order, footing, "feet-inches") == "1.50 yd³"
    assert quantity(footing.order, footing, "millimetres") == "1.15 m³"
    assert (
        "ft"
        not in summary(result, "millimetres")
        .split("Takeoff")[1]
        .split("Weight")[0]
        .split("planning")[0]
    )


def test_what_rounding_would_hide_is_printed_finer():
    """Both would print 8 in; the difference is what decides."""
    hair = Finding(
        "THR-01",
        "R1001.6",
        "Throat",
        "falls short",
        7.99,
        8.0,
        -0.01,
        "in",
        "why",
        "read",
        "2021",
        "",
    )
    assert compared(hair) == ("7.990 in", "8.000 in", "-0.010 in")


def test_a_wrong_unit_system_is_said():
    with pytest.raises(InputError, match="cubits.*feet-inches.*millimetres"):
        summary(assess(Design()), "cubits")


def test_the_summary_ends_with_the_caution():
    assert " ".join(summary(assess(Design())).split()).endswith(CAUTION)


# -- what it costs ------------------------------------------------------------------------------------


def in_a_fresh_python(code: str) -> str:
    run = subprocess.run(
        [sys.executable, "-c", textwrap.dedent(code)], capture_output=True, text=True, check=True
    )
    return run.stdout


def test_importing_the_package_wakes_no_heavy_library():
    """Pandas, matplotlib and pint come when they are asked for; that keeps the import under a
    second.
    """
    awake = in_a_fresh_python("""
        import sys, fireplace_calc
        print(sorted({"pandas", "matplotlib", "pint", "numpy", "ipywidgets"} & set(sys.modules)))
    """)
    assert awake.strip() == "[]"


def test_every_finding_gives_its_reason_in_a_sentence(boathouse):
    """Of the book, of the draft and of the structure."""
    result = assess(boathouse)
    for finding in (*result.findings, *result.judgement, *result.structure.findings):
        assert finding.why[:1].isupper() and finding.why.endswith("."), finding
        assert "  " not in finding.why and "\n" not in finding.why
