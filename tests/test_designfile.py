"""Design files: text that reads back to the identical record, and nothing that loads halfway."""

import os
import stat
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from strategies import designs

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.tables import DATA
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing import whole_files
from fireplace_calc.editing.assumptions import assumed
from fireplace_calc.editing.changes import all_inputs, change
from fireplace_calc.editing.designfile import load, save
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import fingerprint, text_of, written
from fireplace_calc.panels.session import Session

SLOW = settings(deadline=None, max_examples=60, suppress_health_check=list(HealthCheck))
LINES = st.text(
    st.characters(categories=["L", "N", "P", "S", "Zs"]).filter(str.isprintable), max_size=40
).filter(lambda line: line.strip().lower() != "unknown")
LENGTHS = st.floats(0.0, 1.4)


@st.composite
def whole_records(draw):
    """Designs that hold together, with odd texts, odd numbers, unknowns and lists in them."""
    design = draw(designs())
    trim = [
        {
            "name": draw(LINES),
            "place": draw(st.sampled_from(["above", "beside"])),
            "distance": f"{draw(LENGTHS)!r} m",
            "projection": f"{draw(st.floats(0, 0.9))!r} m",
            "combustible": draw(st.booleans()),
        }
        for _ in range(draw(st.integers(0, 3)))
    ]
    nearby = [
        {
            "name": draw(LINES),
            "distance": f"{draw(LENGTHS)!r} m",
            "level": f"{draw(st.floats(0, 36))!r} m",
        }
        for _ in range(draw(st.integers(0, 3)))
    ]
    return change(
        design,
        {
            "name": draw(LINES),
            "note": draw(LINES),
            "surround.trim": trim,
            "roof.nearby": nearby,
            "site.winter": f"{draw(st.floats(214, 303))!r} K",
            "fire.burn_rate": f"{draw(st.floats(1 / 7000, 1 / 121))!r} kg/s",
            "fire.moisture": draw(st.floats(0, 0.7)),
            "roof.pitch": draw(st.floats(0, 3)),
            "house.leakage": draw(st.floats(0.1, 40)),
            "measured.chamber_slope": f"{draw(st.floats(0, 1.5))!r} rad",
            "site.wind": f"{draw(st.floats(10, 100))!r} m/s",
            "site.soil": draw(st.sampled_from([None, "sand", "clay"])),
            "throat.worked_from_room": draw(st.sampled_from([None, True, False])),
            "house.exhaust": f"{draw(st.floats(0, 2))!r} m3/s",
            "throat.damper_area": f"{draw(st.floats(0.001, 2))!r} m2",
        },
    )


@SLOW
@given(whole_records())
def test_a_saved_design_reads_back_identical(tmp_path_factory, design):
    path = tmp_path_factory.mktemp("designs") / "trial.toml"
    save(design, path)
    assert load(path) == design


QUANTITIES = sorted(
    k for k, spec in all_inputs().items() if spec.low is not None and spec.kind != "count"
)


@settings(deadline=None, max_examples=400)
@given(st.sampled_from(QUANTITIES), st.floats(0, 1))
def test_every_number_is_written_so_that_it_reads_back_identical(key, where):
    spec = all_inputs()[key]
    value = min(spec.low + where * (spec.high - spec.low), spec.high)
    assert spec.read(tomllib.loads(f"x = {written(value, spec, key)}")["x"]) == value


@pytest.mark.parametrize("key", QUANTITIES)
def test_defaults_and_limits_are_written_as_people_write_them(key):
    """Nothing declared in inches, feet or percent comes out as a long decimal."""
    spec = all_inputs()[key]
    for value in (spec.default, spec.low, spec.high):
        assert len(written(value, spec, key)) <= 14


def test_friendly_forms():
    inputs = all_inputs()
    trial = change(
        Design(),
        {
            "opening.width": "1067 mm",
            "flue.joint": "3/16 in",
            "fire.burn_rate": "3.5 kg/h",
            "site.winter": "-10 degC",
            "roof.pitch": "7:12",
            "fire.moisture": "20 %",
            "house.ceiling": "2.75 m",
            "house.exhaust": "999.999 m3/h",
            "throat.damper_area": "1.5 ft2",
            "site.wind": "107 mph",
            "ground.concrete_fc": "3000 psi",
        },
    )
    assert written(trial.house.exhaust, inputs["house.exhaust"]) == '"999.999 m3/h"'
    assert written(trial.throat.damper_area, inputs["throat.damper_area"]) == '"216 in2"'
    assert written(trial.site.wind, inputs["site.wind"]) == '"107 mph"'
    strength = inputs["ground.concrete_fc"]
    assert written(trial.ground.concrete_fc, strength, "ground.concrete_fc") == '"3000 psi"'
    for text in ("5-3/64 in", "1/2 in", "-2-1/3 in", "18.2 in", "0 in", "-7/8 in"):
        assert written(to_si(text, "length"), inputs["site.grade"]) == f'"{text}"'
    assert written(trial.opening.width, inputs["opening.width"]) == '"1067 mm"'
    assert written(trial.flue.joint, inputs["flue.joint"]) == '"3/16 in"'
    assert written(trial.fire.burn_rate, inputs["fire.burn_rate"]) == '"3.5 kg/h"'
    assert written(trial.site.winter, inputs["site.winter"]) == '"-10 degC"'
    assert written(trial.roof.pitch, inputs["roof.pitch"], "roof.pitch") == '"7:12"'
    assert written(trial.fire.moisture, inputs["fire.moisture"]) == '"20 %"'
    assert written(trial.house.ceiling, inputs["house.ceiling"]) == '"2750 mm"'


def test_every_input_stands_in_the_file():
    content = tomllib.loads(text_of(Design()))
    flat = {name for name, held in content.items() if not isinstance(held, dict)}
    flat |= {
        f"{group}.{name}"
        for group, held in content.items()
        if isinstance(held, dict)
        for name in held
    }
    assert flat == set(all_inputs())


def test_what_is_left_out_takes_its_default(tmp_path):
    path = tmp_path / "short.toml"
    path.write_text('[opening]\nwidth = "42 in"\n')
    assert load(path) == change(Design(), {"opening.width": "42 in"})


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ('[opening]\nwidth = "12 ft"\n', ["opening.width", "12 ft", "1'-6\"", "8'-0\""]),
        ("[opening]\nwidth = 42\n", ["opening.width", "42", "no unit"]),
        ("[opening]\nwidth = true\n", ["opening.width", "True", "1'-6\""]),
        ('[opening]\nwidth = ["36 in"]\n', ["opening.width", "['36 in']", "1'-6\""]),
        ("[opening]\nwidth = 2024-05-01\n", ["opening.width", "2024", "wanted"]),
        ('[opening.width]\nvalue = "36 in"\n', ["opening.width", "wanted"]),
        ('[opening]\nwidth = "unknown"\n', ["opening.width", "unknown"]),
        ('[opening]\nwitdh = "36 in"\n', ["opening.witdh", "opening.width"]),
        ('[openning]\nwidth = "36 in"\n', ["openning", "opening"]),
        ('opening = "wide"\n', ["opening", "wide", "table"]),
        ('opening_width = "36 in"\n', ["opening_width", "width under [opening]"]),
        ('"opening.width" = "36 in"\n', ["opening.width", "width under [opening]"]),
        ('[opening]\n"opening.width" = "36 in"\n', ["opening.width", "dot"]),
        ("[flue]\nsections = 12.0\n", ["flue.sections", "12.0", "whole number from 4 to 40"]),
        ('[flue]\nsections = "twelve"\n', ["flue.sections", "twelve", "4 to 40"]),
        ("[flue]\nsections = true\n", ["flue.sections", "True", "4 to 40"]),
        ("[flue]\nsections = 99\n", ["flue.sections", "99", "4 to 40"]),
        (f"[house]\nleakage = 1{'0' * 400}\n", ["house.leakage", "wanted"]),
        ("[fire]\nmoisture = nan\n", ["fire.moisture", "nan"]),
        ("[throat]\nworked_from_room = 1\n", ["throat.worked_from_room", "1", "yes or no"]),
        ('[opening]\nhead = "gothic"\n', ["opening.head", "gothic", "straight, segmental"]),
        ("[opening]\nhead = 3\n", ["opening.head", "3", "straight, segmental"]),
        ("name = 7\n", ["name", "7", "text"]),
        ('name = "two\\nlines"\n', ["name", "one line"]),
        ('[roof]\nnearby = "dormer"\n', ["roof.nearby", "dormer", "list of tables"]),
        ('[[roof.nearby]]\nhight = "3 ft"\n', ["roof.nearby", "hight", "level"]),
        ('[[roof.nearby]]\nlevel = "300 ft"\n', ["roof.nearby", "300 ft", "120'-0\""]),
        ("[[surround.trim]]\ncombustible = 1\n", ["surround.trim", "1", "yes or no"]),
        (
            '[[surround.trim]]\ncombustible = "unknown"\n',
            ["surround.trim: Mantel and trim, piece 1: Trim burns cannot be unknown"],
        ),
        ('[opening]\nwidth = "36 in"\nwidth = "40 in"\n', ["line 3"]),
        ('[opening]\nwidth = "36 in\n', ["line 2"]),
        ("[opening]\nwidth = 36 in\n", ["line 2"]),
        ('[throat]\ndepth = "24 in"\n', ["Throat depth", "firebox"]),
    ],
)
def test_a_wrong_file_names_file_key_what_is_allowed_and_what_it_found(tmp_path, text, says):
    path = tmp_path / "wrong.toml"
    path.write_text(text)
    with pytest.raises(InputError) as caught:
        load(path)
    message = str(caught.value)
    assert message.startswith(str(path)) and "\n" not in message
    for words in says:
        assert words in message


@pytest.mark.parametrize(
    "text",
    [
        "9**9**9**9 m",
        "9^9^9^9 m",
        "(9)**9**9 m",
        "m**9**9**9",
        "2 m**99999999",
        "9 ** 9 ** 9 in",
        "1e99999999 in",
        "1e-99999999 in",
        "9" * 20_000 + " in",
        "1/" + "9" * 20_000 + " in",
        "1" + "e9" * 40 + " in",
    ],
)
def test_a_file_cannot_set_us_endless_sums(tmp_path, text):
    path = tmp_path / "sums.toml"
    path.write_text(f'[opening]\nwidth = "{text}"\n')
    with pytest.raises(InputError, match="opening.width"):
        load(path)


def test_what_is_no_text_file_is_refused(tmp_path):
    (tmp_path / "picture.toml").write_bytes(b"\x89PNG\xff\xfe")
    with pytest.raises(InputError, match="UTF-8"):
        load(tmp_path / "picture.toml")
    with pytest.raises(InputError, match="cannot be opened"):
        load(tmp_path / "absent.toml")
    with pytest.raises(InputError, match="cannot be opened"):
        load(tmp_path)
    (tmp_path / "deep.toml").write_text("x = " + "[" * 100_000)
    with pytest.raises(InputError, match="TOML"):
        load(tmp_path / "deep.toml")


def test_saving_is_all_or_nothing(tmp_path, monkeypatch):
    path = tmp_path / "kept.toml"
    save(Design(), path)
    before = path.read_bytes()

    def full_disk(handle):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(whole_files.os, "fsync", full_disk)
    with pytest.raises(InputError, match="No space left"):
        save(replace(Design(), name="another"), path)
    assert path.read_bytes() == before
    assert os.listdir(tmp_path) == ["kept.toml"]


def test_a_folder_that_takes_no_file_is_said_and_nothing_else(tmp_path, monkeypatch):
    """Nothing was written, so there is nothing to clear away either."""

    def refused(*_):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(whole_files.os, "open", refused)
    with pytest.raises(InputError, match="cannot be written: Permission denied"):
        save(Design(), tmp_path / "design.toml")
    monkeypatch.undo()
    monkeypatch.setattr(whole_files.os, "replace", lambda beside, _: os.remove(beside) or refused())
    with pytest.raises(InputError, match="cannot be written: Permission denied"):
        save(Design(), tmp_path / "design.toml")


def test_saving_keeps_permissions_and_follows_links(tmp_path):
    path, link = tmp_path / "real.toml", tmp_path / "link.toml"
    save(Design(), path)
    os.chmod(path, 0o640)
    link.symlink_to(path)
    save(change(Design(), {"opening.width": "40 in"}), link)
    assert link.is_symlink() and stat.S_IMODE(path.stat().st_mode) == 0o640
    assert load(path).opening.width == pytest.approx(40 * INCH)


def test_a_folder_that_is_not_there_is_said(tmp_path):
    with pytest.raises(InputError, match="cannot be written"):
        save(Design(), tmp_path / "nowhere" / "design.toml")


def test_comments_are_welcome(tmp_path):
    path = tmp_path / "noted.toml"
    path.write_text(
        "# measured on site\n" + text_of(Design()).replace('"36 in"', '"36 in"  # clear', 1)
    )
    assert load(Path(path)) == Design()


def test_a_file_that_was_cut_short_is_refused_wherever_it_was_cut():
    """At the end of a line it would still be TOML, with defaults for all that is missing.
    Hand-written files need no mark.
    """
    whole = text_of(load(DATA / "designs" / "boathouse-laid.toml"))
    lines = whole.splitlines(keepends=True)
    for count in range(1, len(lines)):
        with pytest.raises(InputError):
            load_text("".join(lines[:count]))
    assert load_text(whole) == load(DATA / "designs" / "boathouse-laid.toml")
    assert load_text('[opening]\nwidth = "40 in"\n').opening.width == pytest.approx(1.016)


def test_a_mark_that_some_editors_put_first_is_no_part_of_the_text(tmp_path):
    """RFC 3629 lets UTF-8 begin with EF BB BF."""
    path = tmp_path / "marked.toml"
    path.write_bytes(b"\xef\xbb\xbf" + text_of(Design()).encode())
    assert load(path) == Design() == load_text(path.read_bytes())
    path.write_bytes(text_of(Design()).encode("utf-16"))
    with pytest.raises(InputError, match="UTF-8"):
        load(path)


@pytest.mark.parametrize("text", ["", " \n\n", "# only a remark\n", "\ufeff"])
def test_an_empty_file_is_no_design(tmp_path, text):
    path = tmp_path / "empty.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError, match=r"empty\.toml is empty: .* cut short\?$"):
        load(path)


@pytest.mark.parametrize(
    "text",
    [
        'name = "' + "n" * 50_000_000 + '"\n',
        "[roof]\nnearby = [" + "{}," * 3_000_000 + "]\n",
        "a" + ".a" * 200_000 + " = 1\n",
    ],
    ids=["name of 50 MB", "3 million nearby parts", "200 000 dots"],
)
def test_a_file_too_large_for_a_design_is_refused_before_it_is_read(tmp_path, text, monkeypatch):
    monkeypatch.setattr(tomllib, "loads", None)
    path = tmp_path / "large.toml"
    path.write_text(text)
    with pytest.raises(InputError, match="larger than 256 kB"):
        load(path)


def test_the_fullest_design_there_can_be_fits_a_file(tmp_path):
    """Every list full, every word of the longest, and it reads back."""
    trim = [{"name": "t" * 40, "distance": f"{n / 7!r} in"} for n in range(100)]
    nearby = [{"name": "n" * 40, "distance": f"{n / 7!r} ft"} for n in range(100)]
    words = {"name": "n" * 5000, "note": "ü" * 5000, "site.place": "p" * 5000}
    full = change(Design(), {**words, "surround.trim": trim, "roof.nearby": nearby})
    save(full, tmp_path / "full.toml")
    assert load(tmp_path / "full.toml") == full


def test_five_thousand_pieces_of_trim_are_refused(tmp_path):
    path = tmp_path / "trim.toml"
    path.write_text('[[surround.trim]]\nname = "shelf"\n' * 5000)
    with pytest.raises(InputError, match=r"surround\.trim has more than 100 pieces"):
        load(path)


def test_a_wrong_field_of_a_piece_is_found(tmp_path):
    path = tmp_path / "trim.toml"
    path.write_text('[[surround.trim]]\n[[surround.trim]]\nprojection = "9 ft"\n')
    with pytest.raises(
        InputError, match="surround.trim: Mantel and trim, piece 2: Trim projection"
    ):
        load(path)


@pytest.mark.parametrize("length", [0, 1, 40, 110, 300, 5000, -2, -60])
def test_a_kept_file_that_lost_its_end_is_set_aside_and_said(tmp_path, length):
    """0 bytes is what a machine that lost its power leaves; it was taken for the plain fireplace."""
    whole = text_of(change(Design(), {"name": "mine"})).encode()
    (tmp_path / "design.toml").write_bytes(whole[:length])
    session = Session(Design(), "US IRC 2021", "feet-inches", tmp_path)
    assert (tmp_path / "design-unreadable-1.toml").read_bytes() == whole[:length]
    assert "set aside" in session.said
    session.keep()
    assert load(tmp_path / "design.toml") == Design()


def test_the_names_of_a_job_are_kept_and_leave_the_fingerprint(tmp_path):
    """Whoever signs later signs the same sheets; a file without the names is read as before."""
    names = {"job.client": 'A. "Client"', "job.drawn": "Öak Hearths", "job.checked": "N. Body"}
    named = change(Design(), names)
    save(named, tmp_path / "named.toml")
    assert load(tmp_path / "named.toml") == named
    assert fingerprint(named) == fingerprint(Design())
    assert fingerprint(change(named, {"note": "otherwise"})) != fingerprint(named)
    assert not any(key.startswith("job.") for key in assumed(Design()))
    older = text_of(Design(), without="job")
    assert "[job]" not in older and load_text(older) == Design()


def test_a_number_of_too_many_figures_is_said_in_one_sentence():
    with pytest.raises(InputError) as refused:
        load_text(f"[opening]\nwidth = 1{'0' * 5000}\n", "mine.toml")
    assert str(refused.value) == "mine.toml is not valid TOML: a number in it is beyond all bounds."
    said = refused.value.name, refused.value.allowed, refused.value.received
    assert said == ("design file", "a TOML file", "mine.toml")


def test_a_piece_that_is_no_table_is_refused_with_its_place_in_the_list():
    with pytest.raises(InputError) as refused:
        change(Design(), {"surround.trim": [{"name": "shelf"}, 3]})
    fields = "name, place, distance, projection, height, combustible"
    assert (
        str(refused.value) == f"Mantel and trim, piece 2, is 3, but a table of {fields} is wanted."
    )
    said = refused.value.name, refused.value.allowed, refused.value.received
    assert said == ("surround.trim", fields, 3)


def test_what_an_old_file_assumed_is_assumed_as_today_and_what_it_was_told_stays():
    old = '[smoke_chamber]\ncourse = "{0}"\nunit_bed = "{1}"\n'
    assumed_then = load_text(old.format("2-2/3 in (assumed)", "3-5/8 in (assumed)"))
    assert assumed_then == Design()
    told = load_text(old.format("2-2/3 in", "3-5/8 in"))
    assert told.smoke_chamber.course == pytest.approx(8 / 3 * INCH)
    assert told.smoke_chamber.unit_bed == pytest.approx(3.625 * INCH)
    assert told.smoke_chamber != Design().smoke_chamber
