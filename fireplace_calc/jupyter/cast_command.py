"""``fireplace-workbook cast``: a laid design cut into pieces, its set file and its forms."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Mapping
from pathlib import Path

from fireplace_calc.base.reading import to_si
from fireplace_calc.base.units import FEET_INCHES, SYSTEMS, InputError

DONE, LEFT_ALONE = 0, 1
USUAL = "60 kg"


def add_cast(jobs: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    """Declare the command and its options."""
    job = jobs.add_parser(
        "cast",
        help="cut a laid design into pieces that you cast yourself: a set file, and its forms",
    )
    job.set_defaults(do=cast)
    job.add_argument("design", metavar="DESIGN.toml", help="laid, straight head, one upright flue")
    job.add_argument(
        "--out",
        required=True,
        metavar="SET.toml",
        help="the set's file; the list of forms goes beside it, as SET-forms.pdf",
    )
    job.add_argument(
        "--most",
        default=USUAL,
        metavar="WEIGHT",
        help=f"of the heaviest piece; {USUAL} if left out",
    )
    job.add_argument(
        "--units", choices=SYSTEMS, default=FEET_INCHES, help="the tape that forms are built with"
    )


def cast(asked: argparse.Namespace) -> int:
    """Cut, write both files, and say what differs and how a design takes the set.

    Parameters
    ----------
    asked : namespace
        Of the command line.

    Returns
    -------
    int
        Exit status: 0 done, 1 where another file of that name was left alone. [-]

    Raises
    ------
    InputError
        When the design cannot be read or cut, or a file cannot be written.
    """
    from fireplace_calc.build.casting.forms_wording import forms_summary
    from fireplace_calc.drawing.papers.casting_list import print_forms
    from fireplace_calc.editing.designfile import load
    from fireplace_calc.editing.whole_files import write_whole
    from fireplace_calc.geometry.assembled.assembly import as_wanted
    from fireplace_calc.geometry.casting.cutting import cut_into_pieces
    from fireplace_calc.geometry.casting.wish import CastingWish
    from fireplace_calc.pieces.choice import choose

    out = Path(asked.out)
    if out.suffix != ".toml" or out.stem.startswith("."):
        raise InputError(
            f"The set's file is {asked.out}, but a name that ends in .toml is wanted; a design"
            " takes the set by it.",
            "--out",
            "a name that ends in .toml",
            asked.out,
        )
    wish = CastingWish(most=to_si(asked.most, "mass", "Heaviest piece"), units=asked.units)
    made = cut_into_pieces(load(asked.design), wish, out.stem)
    if out.exists() and out.read_bytes() != made.text.encode():
        print(f"Left alone, because it differs from what was cut: {out}", file=sys.stderr)
        return LEFT_ALONE
    stood = as_wanted(choose(made.made, made.choice))
    write_whole(out, made.text.encode())
    forms = out.with_name(f"{out.stem}-forms.pdf")
    pages = print_forms(stood, forms, made.said, asked.units)
    print(f"Written: {out}, and {forms} ({pages} pages).")
    print(forms_summary(stood, asked.units))
    for sentence in made.said:
        print(sentence)
    print("In the design file, beside the set's:")
    print(_lines(made.changes(out.stem)))
    return DONE


def _lines(changes: Mapping[str, str | int | None]) -> str:
    """What to write into a design file."""
    tables: dict[str, list[str]] = {}
    for key, value in changes.items():
        if value is not None:
            table, _, name = key.partition(".")
            told = str(value) if isinstance(value, int) else f'"{value}"'
            tables.setdefault(table, [f"[{table}]"]).append(f"{name} = {told}")
    return "\n\n".join("\n".join(lines) for lines in tables.values())
