"""What was entered, word for word, and its file: TOML that is read back to the identical survey."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from fireplace_calc.base.inputs import plain
from fireplace_calc.base.messages import one_line, shown
from fireplace_calc.base.units import InputError
from fireplace_calc.survey.asked.entry import CANNOT_REACH
from fireplace_calc.survey.asked.walk import BY_KEY, ENTRY_OF

HEADER = """\
# What was measured on a fireplace that stands. Lengths with their unit, "42 in" or "1067 mm";
# "cannot reach" for what nobody can get at. What is left out has not been looked at.
"""
END = "# The end: a survey that begins as above and lacks this line has been cut short."
LARGEST, LONGEST = 100_000, 200
"""Letters of a file, and of one entry. [-]"""
HEAD = ("name", "place")


@dataclass(frozen=True)
class Survey:
    """Every entry as it was typed.

    Attributes
    ----------
    name, place : str
        Of the job.
    told : mapping of str to str
        By box (``SurveyEntry.boxes``), a text with its unit; by key of an entry, that it cannot be
        reached.
    """

    name: str = ""
    place: str = ""
    told: Mapping[str, str] = field(default_factory=dict)

    def put(self, box: str, text: str) -> Survey:
        """The survey with another text in a box; an empty one takes the entry away.

        Parameters
        ----------
        box : str
        text : str
            With its unit.

        Raises
        ------
        InputError
            When there is no such box, or the text cannot be kept.
        """
        entry = ENTRY_OF.get(box)
        if entry is None:
            raise _no_such(box)
        clean = _kept_text(box, " ".join(text.split()))
        if clean.lower() == CANNOT_REACH:
            return self.cannot_reach(entry.key)
        # What is measured after all can be reached.
        rest = {k: v for k, v in self.told.items() if k not in (box, entry.key)}
        return replace(self, told={**rest, box: clean} if clean else rest)

    def named(self, name: str) -> Survey:
        """The survey of a job that is called otherwise.

        Parameters
        ----------
        name : str

        Raises
        ------
        InputError
            When it cannot be kept.
        """
        return replace(self, name=_kept_text("name", " ".join(name.split())))

    def cannot_reach(self, key: str, so: bool = True) -> Survey:
        """The survey with an entry that nobody can get at, or that can be reached again.

        Parameters
        ----------
        key : str
            Of the entry.
        so : bool
        """
        entry = BY_KEY.get(key)
        if entry is None:
            raise _no_such(key)
        rest = {k: v for k, v in self.told.items() if k != key and k not in entry.boxes}
        if so:
            return replace(self, told={**rest, key: CANNOT_REACH})
        return replace(self, told=rest) if self.told.get(key) == CANNOT_REACH else self

    def unreached(self, key: str) -> bool:
        """Whether an entry was told to be out of reach."""
        return self.told.get(key, "").lower() == CANNOT_REACH


def survey_text(survey: Survey) -> str:
    """The survey as the text of a file, in the order of the walk.

    Parameters
    ----------
    survey : Survey
    """
    order = {box: n for n, box in enumerate((*ENTRY_OF, *BY_KEY))}
    lines = [HEADER, f"name = {_quoted(survey.name)}", f"place = {_quoted(survey.place)}", ""]
    lines.append("[told]")
    told = sorted(survey.told.items(), key=lambda pair: order[pair[0]])
    lines += [f"{_quoted(box)} = {_quoted(text)}" for box, text in told]
    return "\n".join([*lines, "", END]) + "\n"


def read_survey(text: str) -> Survey:
    """The survey out of the text of its file, all of it or nothing.

    Parameters
    ----------
    text : str
        As ``survey_text`` writes it, perhaps edited by hand.

    Returns
    -------
    Survey
        Whether each entry can be read as a quantity is told by ``read_entries``, box by box.

    Raises
    ------
    InputError
        One sentence: what is wrong with the file, or which entry nobody knows.
    """
    content = _parsed(text)
    for name in content:
        if name not in (*HEAD, "told"):
            raise InputError(
                f"The survey has no {shown(name)}; it may hold name, place and [told].",
                str(name),
                "name, place, [told]",
                content[name],
            )
    told = content.get("told", {})
    if not isinstance(told, dict):
        raise InputError(
            f"In the survey told is {shown(told)}, but a table [told] is wanted.",
            "told",
            "[told]",
            told,
        )
    head = {name: _kept_text(name, content.get(name, "")) for name in HEAD}
    kept: dict[str, str] = {}
    for box, value in told.items():
        entry = ENTRY_OF.get(box)
        clean = _kept_text(box, value)
        if entry is None and not (box in BY_KEY and clean.lower() == CANNOT_REACH):
            raise _no_such(box)
        if clean:
            kept[box] = clean
    for key in BY_KEY:
        if kept.get(key, "").lower() == CANNOT_REACH:
            both = [box for box in BY_KEY[key].boxes if box != key and box in kept]
            if both:
                raise InputError(
                    f"In the survey {key} cannot be reached, but {both[0]} is told; take one out.",
                    key,
                    f"a reading, or {CANNOT_REACH}",
                    kept[both[0]],
                )
    return Survey(**head, told=kept)


def _parsed(text: str) -> dict[str, Any]:
    text = text.removeprefix("\ufeff").replace("\r\n", "\n")
    why = ""
    if len(text) > LARGEST:
        why = f"is longer than {LARGEST} letters: is it another file?"
    elif text.startswith(HEADER.partition("\n")[0]) and END not in text:
        why = f'has been cut short: its last line, "{END}", is missing.'
    if why:
        raise InputError(f"The survey {why}", "survey", "a whole file", len(text))
    try:
        return tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError, ValueError) as wrong:
        why = one_line(f"The survey cannot be read: {wrong}; entries stand in quotes.")
    raise InputError(why, "survey", "TOML", "")


def _kept_text(box: str, value: Any) -> str:
    """A text that can be kept and printed."""
    if isinstance(value, str) and len(value) <= LONGEST and plain(value):
        return value
    wanted = f"one line of text in quotes, of {LONGEST} letters at most"
    raise InputError(f"{box} is {shown(value)}, but {wanted} is wanted.", box, wanted, value)


def _no_such(box: str) -> InputError:
    import difflib  # here, so that importing the package does not wait for it

    near = difflib.get_close_matches(str(box), [*ENTRY_OF, *BY_KEY], n=2, cutoff=0.5)
    hint = f"did you mean {' or '.join(near)}?" if near else "the printed sheet lists them all."
    return InputError(
        one_line(f"The survey asks for no {shown(box)}; {hint}"), str(box), "an entry", box
    )


def _quoted(text: str) -> str:
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
