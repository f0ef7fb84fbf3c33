"""DEVELOPERS.md and README.md say what is so."""

import re
import subprocess
from pathlib import Path

from fireplace_calc.report.nomenclature import page

ROOT = Path(__file__).resolve().parent.parent


def test_the_nomenclature_is_the_one_in_the_code():
    assert (ROOT / "NOMENCLATURE.md").read_text() == page(), (
        "run python -m fireplace_calc.report.nomenclature > NOMENCLATURE.md"
    )


def test_ci_runs_the_command_of_the_readme():
    readme, script = (ROOT / "README.md").read_text(), (ROOT / ".ci" / "run").read_text()
    pattern = re.search(r"grep -E '(.+)' README.md", script)[1]
    found = [line for line in readme.splitlines() if re.search(pattern, line)]
    assert len(found) == 1 and found[0].endswith("pytest")


def test_ci_script_is_sound_bash():
    subprocess.run(["bash", "-n", ROOT / ".ci" / "run"], check=True)


def test_every_file_the_readme_names_is_there():
    for path in re.findall(
        r"`?((?:notebooks|data|fireplace_calc|tests)/[\w./-]+)`?", (ROOT / "README.md").read_text()
    ):
        assert (ROOT / path).exists(), path


def test_the_job_stands_in_the_first_paragraph():
    first = (ROOT / "README.md").read_text().split("\n\n")[1]
    for word in ("opening", "flue", "chimney", "hearth", "order", "inspector"):
        assert word in first
