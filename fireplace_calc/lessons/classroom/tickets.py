"""Tickets: what a student's exercises are drawn from, worked out of the trainer's secret.

A ticket is a seed with two letters that tell a slip of the pen, or somebody else's name. Whoever
has the ticket has the exercises of one student; nobody gets from it to the secret, or to another
student's ticket.
"""

from __future__ import annotations

import hashlib
import hmac

from fireplace_calc.base.messages import shown
from fireplace_calc.base.units import InputError
from fireplace_calc.lessons.classroom.rosters import same_name

LETTERS = "0123456789abcdefghjkmnpqrstvwxyz"
"""Of a ticket: none that is taken for another when it is written by hand."""
ALIKE = str.maketrans({"i": "1", "l": "1", "o": "0", "u": "v"})
"""How letters are read that a ticket does not have."""
PLACE, DRAWN, CHECK = 2, 8, 2
"""Letters for the place in the class, for the seed itself, and to check both. [-]"""
GROUP = 4
"""Letters between two hyphens. [-]"""


def ticket_of(secret: str, name: str, place: int) -> str:
    """The ticket of one student.

    Parameters
    ----------
    secret : str
        Of the class.
    name : str
        Name or number of the student.
    place : int
        In the class, from 1 on. [-]

    Returns
    -------
    str
        Twelve letters and digits in groups of four.

    Examples
    --------
    >>> ticket_of("not a secret", "Ann Lee", 1)
    '0126-sqv9-cbd9'
    """
    told = f"{place} {same_name(name)}".encode()
    mixed = hmac.new(secret.encode(), told, hashlib.sha256).digest()
    seed = _letters(place, PLACE) + _letters(int.from_bytes(mixed[:5], "big"), DRAWN)
    whole = seed + _checked(seed, name)
    return as_printed(whole)


def seed_of(ticket: str, name: str) -> str:
    """The seed that a ticket holds, if it is this student's.

    Parameters
    ----------
    ticket : str
        As somebody typed it; capitals, blanks and hyphens do not count.
    name : str
        Name or number of the student.

    Returns
    -------
    str
        Ten letters and digits.

    Raises
    ------
    InputError
        When it is no ticket, or not this student's.
    """
    typed = as_printed(ticket).replace("-", "")
    allowed = f"{PLACE + DRAWN + CHECK} letters and digits, as on the slip"
    if len(typed) != PLACE + DRAWN + CHECK or not set(typed) <= set(LETTERS):
        is_ = shown(ticket) if ticket.strip() else "empty"
        raise InputError(f"Ticket is {is_}, but {allowed}, are wanted.", "Ticket", allowed, ticket)
    seed, check = typed[:-CHECK], typed[-CHECK:]
    if check != _checked(seed, name):
        raise InputError(
            f"Ticket {shown(ticket)} is not for the name {shown(name)}: type both as they stand on"
            " the slip.",
            "Ticket",
            "the name and the ticket of one slip",
            ticket,
        )
    return seed


def place_of(seed: str) -> int:
    """Place in the class that a seed was drawn for. [-]

    >>> place_of(seed_of("OI26 SQV9 CBD9", "ann lee"))
    1
    """
    return LETTERS.index(seed[0]) * len(LETTERS) + LETTERS.index(seed[1])


def as_printed(ticket: str) -> str:
    """A ticket as it stands on a slip, however it was typed.

    >>> as_printed("OI26 SQV9CBD9")
    '0126-sqv9-cbd9'
    """
    typed = "".join(c for c in ticket.lower().translate(ALIKE) if c.isalnum())
    return "-".join(typed[k : k + GROUP] for k in range(0, len(typed), GROUP))


def _letters(number: int, many: int) -> str:
    """A number in so many letters."""
    found = ""
    for _ in range(many):
        number, rest = divmod(number, len(LETTERS))
        found = LETTERS[rest] + found
    return found


def _checked(seed: str, name: str) -> str:
    """The letters that tell a slip of the pen; anybody can work them out, they are no secret."""
    mixed = hashlib.sha256(f"{seed} {same_name(name)}".encode()).digest()
    return _letters(int.from_bytes(mixed[:2], "big"), CHECK)
