"""What a reader has on the table is kept: after every change, through a killed kernel, beside files
that cannot be read.
"""

import time
from pathlib import Path

import pytest
from jupyter_client.manager import start_new_kernel

from fireplace_calc import change, load
from fireplace_calc.base.units import INCH, InputError
from fireplace_calc.panels import panel
from fireplace_calc.panels.session import MOST_OPTIONS, Session

pytestmark = pytest.mark.usefixtures("no_full_collection")

EXAMPLE = Path(__file__).resolve().parents[1] / "data" / "designs" / "boathouse.toml"
ENDLESS = """
from fireplace_calc import load
from fireplace_calc.panels import panel
made = panel(load({example!r}), keep={folder!r}, folds=("checks",))
for n in range(100000):
    made.set_input("opening.width", f"{{30 + n % 60}} in")
    print(30 + n % 60, flush=True)
"""


def session(folder, first=None) -> Session:
    return Session(load(EXAMPLE) if first is None else first, "US IRC 2021", "feet-inches", folder)


def test_design_options_code_and_units_come_back(tmp_path):
    one = session(tmp_path / "new" / "folder")
    one.take({"opening.width": "50 in"})
    one.put_aside()
    one.take({"opening.width": "52 in"})
    one.pack, one.units = "UK ADJ", "millimetres"
    one.keep()
    other = session(tmp_path / "new" / "folder")
    assert (other.design, other.options, other.pack, other.units) == (
        one.design,
        one.options,
        "UK ADJ",
        "millimetres",
    )
    assert "left" in other.said and other.undo() and other.design == load(EXAMPLE)
    other.options.clear()
    other.keep()
    assert session(tmp_path / "new" / "folder").options == []


def test_an_empty_folder_begins_with_the_example(tmp_path):
    assert session(tmp_path).design == load(EXAMPLE) and session(tmp_path).said == ""


def test_a_file_that_cannot_be_read_is_set_aside_and_never_written_over(tmp_path):
    for number in (1, 2):
        (tmp_path / "design.toml").write_text(f"half a design {number}")
        found = session(tmp_path)
        assert found.design == load(EXAMPLE) and f"design-unreadable-{number}.toml" in found.said
        found.take({"opening.width": "50 in"})
        found.keep()
        assert (
            tmp_path / f"design-unreadable-{number}.toml"
        ).read_text() == f"half a design {number}"
    (tmp_path / "reader.toml").write_text('pack = "no such book"\nunits = 7')
    assert session(tmp_path).pack == "US IRC 2021" and session(tmp_path).units == "feet-inches"


def test_there_is_room_for_four_options():
    full = session(None)
    for _ in range(MOST_OPTIONS):
        full.put_aside()
    with pytest.raises(InputError, match="take one away"):
        full.put_aside()


def test_a_folder_that_cannot_be_written_is_said_and_the_work_goes_on(tmp_path):
    (tmp_path / "file").write_text("no folder")
    made = panel(load(EXAMPLE), keep=tmp_path / "file" / "under", folds=())
    made.set_input("opening.width", "50 in")
    assert "cannot be written" in made.said.value and made.design.opening.width == pytest.approx(
        1.27
    )


@pytest.mark.parametrize("after", [3, 17])
def test_a_kernel_killed_at_any_moment_loses_nothing_older_than_the_last_change(tmp_path, after):
    """A real kernel moves a slider without end and tells each place once it is there; it is killed
    in the middle of a move.
    """
    manager, client = start_new_kernel()
    try:
        client.execute(ENDLESS.format(example=str(EXAMPLE), folder=str(tmp_path)))
        told, deadline = [], time.monotonic() + 60
        while len(told) < after and time.monotonic() < deadline:
            message = client.get_iopub_msg(timeout=60)
            assert message["msg_type"] != "error", message["content"]
            if message["msg_type"] == "stream":
                told += [int(word) for word in message["content"]["text"].split()]
        kernel = manager.provisioner.process
        kernel.kill()
        kernel.wait(20)
        while True:  # what it still had to say
            try:
                message = client.get_iopub_msg(timeout=0.5)
            except Exception:  # an empty queue
                break
            if message["msg_type"] == "stream":
                told += [int(word) for word in message["content"]["text"].split()]
    finally:
        client.stop_channels()
        manager.shutdown_kernel(now=True)
    assert len(told) >= after
    kept = load(tmp_path / "design.toml")
    width = round(kept.opening.width / INCH)
    # what was told is kept; at most one more move was under way
    assert width in (told[-1], 30 + (told[-1] - 30 + 1) % 60), (width, told[-3:])
    assert kept == change(load(EXAMPLE), {"opening.width": f"{width} in"})
    assert panel(load(EXAMPLE), keep=tmp_path, folds=()).design == kept
    assert [
        path.name
        for path in tmp_path.iterdir()
        if path.suffix == ".toml" and "unreadable" in path.name
    ] == []
