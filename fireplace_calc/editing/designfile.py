"""Design files: saved over what stands there, and loaded again to the identical record."""

from __future__ import annotations

import os
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.file_reading import file_text, load_file, parsed_file
from fireplace_calc.editing.file_text import quoted
from fireplace_calc.editing.kept_comments import text_over
from fireplace_calc.editing.whole_files import write_whole


def save(design: Design, path: str | os.PathLike[str]) -> None:
    """Write a design file in one step: a reader sees the old file or the new one, never half of
    either. What a reader wrote into the old one as comments stays.

    Parameters
    ----------
    design : Design
        What to write.
    path : str or path
        The file; its folder has to exist. Permissions of a file already there are kept.

    Raises
    ------
    InputError
        When the file cannot be written.
    """
    write_whole(path, text_over(_old_text(Path(path)), design).encode())


def _old_text(path: Path) -> str:
    """Text of the file as it stands; none where there is no text to be read."""
    with suppress(OSError, InputError):
        return file_text(path)
    return ""


def load(path: str | os.PathLike[str]) -> Design:
    """Read a design file, all of it or nothing.

    Parameters
    ----------
    path : str or path
        A TOML file; what it leaves out takes its default.

    Returns
    -------
    Design
        Checked input by input and as a whole.

    Raises
    ------
    InputError
        One sentence that names the file, the key, what is allowed and what was found.
    """
    return load_file(Path(path))


def text_of_words(words: Mapping[str, str]) -> str:
    """A few plain words with their names, as the text of a file."""
    return "".join(f"{name} = {quoted(word)}\n" for name, word in words.items())


def load_words(path: str | os.PathLike[str]) -> dict[str, str]:
    """Read them back; an empty dict where there is no such file or it is no longer readable."""
    try:
        return {
            name: word for name, word in parsed_file(Path(path)).items() if isinstance(word, str)
        }
    except InputError:
        return {}
