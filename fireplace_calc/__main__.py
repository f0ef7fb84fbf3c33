"""The main job without a screen: ``python -m fireplace_calc DESIGN.toml --out DIR``.

Writes the drawing set as PDF, takeoff and findings as CSV, and prints a summary. Exit status 0 when
nothing falls short, 1 when something does, 2 for an input error.
"""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from fireplace_calc.assessment import DEFAULT_PACK, Assessment, assess
from fireplace_calc.base.resources import made_by
from fireplace_calc.base.units import FEET_INCHES, SYSTEMS, InputError
from fireplace_calc.editing.changes import change
from fireplace_calc.editing.designfile import load
from fireplace_calc.report.csv_files import write_csv
from fireplace_calc.report.plain_summary import summary
from fireplace_calc.report.sentences import require_units
from fireplace_calc.rules import PACKS
from fireplace_calc.rules.comparing import FALLS_SHORT

if TYPE_CHECKING:
    from fireplace_calc.takeoff.cost import Price

NOTHING_SHORT, SOMETHING_SHORT, INPUT_ERROR = 0, 1, 2


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        self.exit(INPUT_ERROR, f"{self.prog}: {message}; --help lists what is wanted.\n")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="python -m fireplace_calc",
        description="Draw, check and take off one fireplace design.",
        epilog="Exit status: 0 nothing falls short, 1 something does, 2 input error.",
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=made_by())
    parser.add_argument("design", metavar="DESIGN.toml", help="design file")
    parser.add_argument(
        "--out",
        metavar="DIR",
        required=True,
        help=(
            "folder for drawings.pdf and .dxf, order.xlsx, takeoff.csv, findings.csv and draft.csv;"
            " made when not there"
        ),
    )
    parser.add_argument(
        "--pack", metavar="NAME", default=DEFAULT_PACK, help=f"one of: {', '.join(PACKS)}"
    )
    parser.add_argument(
        "--units", metavar="NAME", default=FEET_INCHES, help=f"one of: {', '.join(SYSTEMS)}"
    )
    parser.add_argument(
        "--paper",
        metavar="NAME",
        help="letter, 11x17, A4 or A3; when left out 11x17, or A3 for millimetres",
    )
    parser.add_argument(
        "--prices",
        metavar="LIST.csv",
        help="your own price list; the invented example list when left out",
    )
    parser.add_argument(
        "--pictures",
        metavar="KIND",
        help="svg or png: writes every sheet and view as a picture of its own into DIR/pictures",
    )
    parser.add_argument(
        "--client",
        metavar="NAME",
        help=(
            "for whom it is, on every sheet: writes for-the-client.pdf, .png and .html too, which"
            " take a while"
        ),
    )
    parser.add_argument("--designer", metavar="NAME", help="who drew it, on every sheet")
    parser.add_argument("--checked", metavar="NAME", help="who checked it, on every sheet")
    return parser


def _folder(path: str) -> Path:
    if not path.strip():
        raise InputError(
            '--out is "", but a folder is wanted; "." is this one.', "--out", "a folder", path
        )
    folder = Path(path)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as trouble:
        raise InputError(
            f"{path} cannot be made a folder: {trouble.strerror}.", "--out", "a folder", path
        ) from None
    return folder


def _for_client(
    result: Assessment,
    folder: Path,
    asked: argparse.Namespace,
    units: str,
    known: Mapping[str, Price],
) -> None:
    from fireplace_calc.drawing.client_pages.page_plan import NamedDesign
    from fireplace_calc.exports.hand_over_files import write_hand_over
    from fireplace_calc.report.for_client.handed_over import names_of

    names = names_of(result.design)
    chosen = NamedDesign(result.design.name.strip() or "This fireplace", result)
    for kind in ("pdf", "png", "html"):
        path = folder / f"for-the-client.{kind}"
        for _ in write_hand_over(path, chosen, (), names, units, asked.paper, known):
            pass


def main(arguments: Sequence[str] | None = None) -> int:
    """Do the whole job and say how it went.

    Parameters
    ----------
    arguments : sequence of str or None
        As on the command line, without the program's name.

    Returns
    -------
    int
        Exit status. [-]
    """
    asked = _parser().parse_args(arguments)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    try:
        units = require_units(asked.units)
        named = {"client": asked.client, "drawn": asked.designer, "checked": asked.checked}
        told = {f"job.{name}": text for name, text in named.items() if text is not None}
        result = assess(change(load(asked.design), told), asked.pack)
        from fireplace_calc.drawing.page.saved_picture import known_kind
        from fireplace_calc.drawing.papers.full_papers import paper_set
        from fireplace_calc.drawing.plates.sizes import paper
        from fireplace_calc.exports import write_dxf, write_spreadsheet
        from fireplace_calc.takeoff.cost import prices

        paper(units, asked.paper)
        if asked.pictures is not None:
            known_kind(asked.pictures)
        known = prices(asked.prices)
        folder = _folder(asked.out)
        write_csv(result, folder)
        paper_set(result, folder / "drawings.pdf", units, asked.paper, prices=known)
        write_spreadsheet(result, known, folder / "order.xlsx")
        write_dxf(result, folder / "drawings.dxf", units)
        if asked.pictures is not None:
            from fireplace_calc.exports.picture_files import write_pictures

            shown = write_pictures(
                result, folder / "pictures", asked.pictures, units, asked.paper, known
            )
            for _ in shown:
                pass
        if asked.client is not None:
            _for_client(result, folder, asked, units, known)
    except InputError as wrong:
        print(wrong, file=sys.stderr)
        return INPUT_ERROR
    except OSError as trouble:
        print(
            f"{trouble.filename or asked.out} cannot be written: {trouble.strerror}.",
            file=sys.stderr,
        )
        return INPUT_ERROR
    try:
        print(f"{summary(result, units)}\n\n{made_by()}", flush=True)
    except BrokenPipeError:  # whoever read it has seen enough; the files and the status stand
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    return SOMETHING_SHORT if result.counts.get(FALLS_SHORT) else NOTHING_SHORT


if __name__ == "__main__":
    sys.exit(main())
