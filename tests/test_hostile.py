"""Opened in a real JupyterLab, a stranger's notebook runs nothing, whatever it says of itself; a
supplied one opens ready.
"""

import json
import os
import subprocess
import sys

import nbformat
import pytest
from bench.browser import chromium, page, server
from test_browser import REQUIRED

from fireplace_calc.base.resources import NOTEBOOKS

VIEW, STATE = (
    "application/vnd.jupyter.widget-view+json",
    "application/vnd.jupyter.widget-state+json",
)
SCRIPT = "window.ran = 'loaded'; export default { render() { window.ran = 'shown'; } };"
WIDGET = {
    "model_name": "AnyModel",
    "model_module": "anywidget",
    "model_module_version": "~0.11.*",
    "state": {
        "_model_module": "anywidget",
        "_model_name": "AnyModel",
        "_model_module_version": "~0.11.*",
        "_view_module": "anywidget",
        "_view_name": "AnyView",
        "_view_module_version": "~0.11.*",
        "_anywidget_id": "stranger.Widget",
        "_esm": SCRIPT,
    },
}


def writes(path):
    """A cell that leaves a file behind when it is run."""
    return nbformat.v4.new_code_cell(f"open({str(path)!r}, 'w').write('ran')")


@pytest.fixture
def strangers(tmp_path, monkeypatch):
    """A folder with a supplied notebook, others that give themselves out for one, and what their
    cells would write.
    """
    folder, ran = tmp_path.resolve() / "post", tmp_path.resolve() / "ran"
    beside = folder / "beside"
    beside.mkdir(parents=True)
    ran.mkdir()
    ours = (NOTEBOOKS / "first-look.ipynb").read_text()
    (folder / "first-look.ipynb").write_text(ours)
    # our name, our words, our metadata, our cells, and one more; trusted as far as Jupyter goes
    extra = nbformat.reads(ours, 4)
    extra.cells = [
        nbformat.from_dict({**cell, "outputs": []}) if cell.cell_type == "code" else cell
        for cell in extra.cells
    ]
    extra.cells.insert(1, writes(ran / "extra"))
    nbformat.write(extra, folder / "extra.ipynb")
    subprocess.run(
        [sys.executable, "-m", "jupyter", "trust", folder / "extra.ipynb"],
        check=True,
        capture_output=True,
    )
    # scripts in words, in outputs and in saved widgets
    scripts = nbformat.reads(ours, 4)
    shown = nbformat.v4.new_output(
        "display_data",
        {
            "text/html": "<img src=x onerror=\"window.ran = 'output'\"><script>window.ran = 1</script>",
            VIEW: {"model_id": "abc"},
        },
    )
    scripts.cells[0].source += "\n\n<img src=x onerror=\"window.ran = 'words'\">"
    scripts.cells.append(
        nbformat.from_dict(
            {**writes(ran / "scripts"), "outputs": [shown], "metadata": {"trusted": True}}
        )
    )
    scripts.metadata["widgets"] = {
        STATE: {"version_major": 2, "version_minor": 0, "state": {"abc": WIDGET}}
    }
    nbformat.write(scripts, folder / "scripts.ipynb")
    # a supplied one, unchanged, beside a module that would be loaded in place of the package
    (beside / "first-look.ipynb").write_text(ours)
    (beside / "fireplace_calc.py").write_text(writes(ran / "beside").source)
    # a supplied one, unchanged, that asks for another kernel
    other = nbformat.reads(ours, 4)
    other.metadata["kernelspec"]["name"] = "other"
    nbformat.write(other, folder / "other.ipynb")
    start = [sys.executable, "-m", "ipykernel_launcher", "-f", "{connection_file}"]
    kernel = tmp_path / "share" / "kernels" / "other"
    kernel.mkdir(parents=True)
    told = {"argv": start, "display_name": "Other", "language": "python"}
    (kernel / "kernel.json").write_text(json.dumps(told))
    monkeypatch.setenv("JUPYTER_PATH", str(tmp_path / "share"))
    return folder, ran


def test_a_strangers_notebook_waits_and_a_supplied_one_runs(strangers):
    if chromium() is None:
        assert os.environ.get(REQUIRED) != "required", (
            "no Chromium, but this run must not do without the browser test"
        )
        pytest.skip(
            "no Chromium on this machine: the browser test is left out "
            "(Debian: apt-get install chromium)"
        )
    folder, ran = strangers
    with server("lab", folder / "first-look.ipynb", folder) as address, page() as view:
        for name, why in (
            ("extra", "its code is not"),
            ("scripts", "its code is not"),
            ("beside/first-look", "fireplace_calc.py"),
            ("other", "another kernel"),
        ):
            view.goto(address.replace("/tree/first-look.ipynb", f"/tree/{name}.ipynb"))
            bar = view.locator(".fireplace-asks")
            bar.wait_for(timeout=60_000)
            assert why in bar.text_content() and bar.get_attribute("role") == "alert"
            view.locator(".jp-Notebook-ExecutionIndicator[data-status=idle]").wait_for(
                timeout=60_000
            )  # the kernel could
            view.wait_for_timeout(2500)
            assert view.locator(".fp-sheet").count() == 0 and view.evaluate("window.ran") is None, (
                name
            )
            assert list(ran.iterdir()) == [], name
        view.goto(address)
        view.locator(".fp-sheet").first.wait_for(timeout=60_000)
        assert view.locator(".fireplace-asks").count() == 0
        # asked, it runs
        view.goto(address.replace("/tree/first-look.ipynb", "/tree/extra.ipynb"))
        view.get_by_role("button", name="Run all cells", exact=True).click()
        view.locator(".fp-sheet").first.wait_for(timeout=60_000)
        for _ in range(300):  # the cell that leaves a trace comes after the one with the sheet
            if any(ran.iterdir()):
                break
            view.wait_for_timeout(100)
        assert [path.name for path in ran.iterdir()] == ["extra"]
        assert view.locator(".fireplace-asks").count() == 0


def test_the_traps_are_live(strangers):
    """What must not run would run: the cells are sound, the saved widget is one that anywidget
    loads.
    """
    folder, ran = strangers
    for name, cell in (("extra", 1), ("scripts", -1)):
        exec(nbformat.read(folder / f"{name}.ipynb", 4).cells[cell].source, {})
    exec((folder / "beside" / "fireplace_calc.py").read_text(), {})
    assert sorted(path.name for path in ran.iterdir()) == ["beside", "extra", "scripts"]
    assert json.loads((folder / "scripts.ipynb").read_text())["metadata"]["fireplace"][
        "run_on_open"
    ]
