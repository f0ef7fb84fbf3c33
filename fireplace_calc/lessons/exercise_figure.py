"""What the drawing of an exercise is made of, in metres of the thing itself, before anything is
laid out.
"""

from __future__ import annotations

from dataclasses import dataclass

Spot = tuple[float, float]
"""Level and upright place of a point. [m]"""


@dataclass(frozen=True, slots=True)
class FigureLine:
    """A line, or an outline that is hatched.

    Attributes
    ----------
    points : tuple of tuple of float
        [m]
    weight : str
        A pen of the drawing's style: ``cut``, ``seen``, ``hidden``, ``fine``.
    closed : bool
    hatch : str
        Material that it is cut of, or empty.
    step : int
        Step, from nought, whose working it belongs to; -1 for what is always there. [-]
    """

    points: tuple[Spot, ...]
    weight: str = "seen"
    closed: bool = False
    hatch: str = ""
    step: int = -1


@dataclass(frozen=True, slots=True)
class FigureSize:
    """A size on a dimension string outside the drawing.

    Attributes
    ----------
    start, end : tuple of float
        [m]
    text : str
        The figure in the reader's units.
    side : str
        ``left``, ``right``, ``above`` or ``below`` the drawing.
    row : int
        Counted outward from the drawing. [-]
    step : int
        Step whose answer it is: a question mark until it is answered; -1 for a given. [-]
    """

    start: Spot
    end: Spot
    text: str
    side: str
    row: int
    step: int = -1


@dataclass(frozen=True, slots=True)
class FigureWord:
    """A word within the drawing, its middle at a point [m]; ``step`` as of a size."""

    at: Spot
    text: str
    name: str = ""
    step: int = -1


@dataclass(frozen=True, slots=True)
class ExerciseFigure:
    """The drawing of one exercise.

    Attributes
    ----------
    said : str
        What it shows, for whoever cannot see it.
    lines : tuple of FigureLine
    sizes : tuple of FigureSize
    words : tuple of FigureWord
    """

    said: str
    lines: tuple[FigureLine, ...] = ()
    sizes: tuple[FigureSize, ...] = ()
    words: tuple[FigureWord, ...] = ()
