"""Broken design files: each is refused in one sentence within a second, or read whole; a kept one
is never lost.
"""

from __future__ import annotations

import signal
import tempfile
import time
from collections.abc import Callable
from contextlib import contextmanager
from pathlib import Path
from random import Random

from fireplace_calc import assess, load
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.file_reading import load_text
from fireplace_calc.editing.file_text import END, text_of
from fireplace_calc.panels.session import Session
from fuzzing.chance import ROOT, chance, random_design
from fuzzing.designs import solid_and_closed, sure

LIMIT = 1.0
"""Of processor time for one file. [s]"""
LONGEST_SENTENCE = 1000
"""An error says what is wrong in no more letters. [-]"""
VALUES = (
    "nan",
    "inf",
    "-inf",
    "1e999",
    "-0.0",
    "9" * 400,
    "-" + "9" * 4000,
    "0x7fffffffffffffff",
    "true",
    "[]",
    "{}",
    '""',
    '" "',
    "1979-05-27",
    "07:32:00",
    "[[[[1]]]]",
    '"nan in"',
    '"inf in"',
    '"1e308 in"',
    '"1e999 in"',
    '"-36 in"',
    '"36"',
    "36",
    "36.0",
    '"36 in 5"',
    '"36 in\\n37 in"',
    '"""36 in\n37 in"""',
    '"\\u0000"',
    '"\\u202e36 in"',
    '"36\\u00a0in"',
    '"unknown"',
    '"UNKNOWN"',
    '"yes"',
    '"' + "x" * 100_000 + '"',
    '"' + "9" * 100_000 + ' in"',
    "{width = 3}",
    '["36 in"]',
    '"1/0 in"',
    '"36 in" # "',
    "'36 in'",
    '"½ in"',
    '"2**99 in"',
    '"36 parsec"',
    '"36 degC"',
    '"0 in"',
    '"1e-300 in"',
    '"-400 degC"',
    '"1e400"',
    "1_000",
    "0b1",
    '"36 in',
    "= =",
)
"""What a value is swapped for, as TOML."""


class Slow(BaseException):
    """It took more than its second; no ``except Exception`` swallows it."""


@contextmanager
def watched():
    """Processor time is counted, not the clock: other work on the machine makes nobody slow."""

    def ring(*_: object) -> None:
        raise Slow

    before, start = signal.signal(signal.SIGPROF, ring), time.process_time()
    signal.setitimer(signal.ITIMER_PROF, LIMIT)
    try:
        yield
        late = time.process_time() - start > LIMIT
    except Slow:
        late = True
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)
    if late:
        raise Slow


def _flip(dice: Random, text: bytes) -> bytes:
    held = bytearray(text)
    for _ in range(dice.choice((1, 1, 2, 5, 50))):
        held[dice.randrange(len(held))] = dice.randrange(256)
    return bytes(held)


def _cut(dice: Random, text: bytes) -> bytes:
    return text[: dice.randrange(len(text))]


def _lines(change: Callable[[Random, list[bytes]], None]) -> Callable[[Random, bytes], bytes]:
    def mutate(dice: Random, text: bytes) -> bytes:
        lines = text.splitlines(keepends=True)
        for _ in range(min(dice.choice((1, 1, 3)), len(lines))):
            change(dice, lines)
        return b"".join(lines)

    return mutate


def _double(dice: Random, lines: list[bytes]) -> None:
    line = dice.randrange(len(lines))
    lines.insert(dice.randrange(len(lines)) if dice.random() < 0.5 else line, lines[line])


def _drop(dice: Random, lines: list[bytes]) -> None:
    del lines[dice.randrange(len(lines))]


def _swap(dice: Random, lines: list[bytes]) -> None:
    one, other = dice.randrange(len(lines)), dice.randrange(len(lines))
    lines[one], lines[other] = lines[other], lines[one]


def _value(dice: Random, lines: list[bytes]) -> None:
    able = [n for n, line in enumerate(lines) if b" = " in line]
    if able:
        line = dice.choice(able)
        lines[line] = (
            lines[line].partition(b" = ")[0] + b" = " + dice.choice(VALUES).encode() + b"\n"
        )


def _key(dice: Random, lines: list[bytes]) -> None:
    able = [n for n, line in enumerate(lines) if b" = " in line]
    if able:
        line = dice.choice(able)
        key = dice.choice(
            (
                b"no_such",
                b'"a.b"',
                b"a.b.c",
                b"",
                b'"\\n"',
                b"k" * 100_000,
                "größe".encode(),
                b"width.width",
                b"__class__",
            )
        )
        lines[line] = key + b" = " + lines[line].partition(b" = ")[2]


def _insert(dice: Random, text: bytes) -> bytes:
    at = dice.randrange(len(text))
    junk = (
        b"\x00",
        b"\xff\xfe",
        "\ufeff".encode(),
        b"\r",
        b"[",
        b"[[surround.trim]]\n",
        b"[surround.trim]\n",
        b'"""',
        b"\n\n",
        b"\xc3",
        b"[opening]\n",
        b"a = " + b"[" * 5000 + b"]" * 5000 + b"\n",
        b"x" * 100_000,
    )
    return text[:at] + dice.choice(junk) + text[at:]


def _encoded(dice: Random, text: bytes) -> bytes:
    kind = dice.choice(
        ("utf-16", "utf-16-le", "utf-32", "latin-1", "cp1252", "utf-8-sig", "utf-7", "cp037")
    )
    return (text.decode(errors="replace") + "# é\n").encode(kind, errors="replace")


def _ends(dice: Random, text: bytes) -> bytes:
    return text.replace(b"\n", dice.choice((b"\r\n", b"\r", b"\n\r", b"\x0b", "\u2028".encode())))


def _bare(dice: Random, text: bytes) -> bytes:
    return dice.choice(
        (
            b"",
            b" ",
            b"\n\n",
            b"# only a remark\n",
            b"\x00" * 4096,
            b"\xef\xbb\xbf",
            b"{}",
            b"null",
            b"[]",
            b"PK\x03\x04",
            b"%PDF-1.4",
        )
    )


def _many_trims(dice: Random, text: bytes) -> bytes:
    return text + b'\n[[surround.trim]]\nname = "shelf"\ndistance = "13 in"\n' * 5000


def _many_nearby(dice: Random, text: bytes) -> bytes:
    return b"[roof]\nnearby = [" + b"{}," * 3_000_000 + b"]\n"


def _long_name(dice: Random, text: bytes) -> bytes:
    return b'name = "' + b"n" * 50_000_000 + b'"\n'


def _long_comment(dice: Random, text: bytes) -> bytes:
    return b"#" * 30_000_000 + b"\n" + text


def _many_tables(dice: Random, text: bytes) -> bytes:
    return text + b"".join(b"[table%d]\n" % n for n in range(100_000))


def _many_dots(dice: Random, text: bytes) -> bytes:
    return b"a" + b".a" * 200_000 + b" = 1\n"


USUAL = (
    _flip,
    _flip,
    _cut,
    _lines(_double),
    _lines(_drop),
    _lines(_swap),
    _lines(_value),
    _lines(_value),
    _lines(_value),
    _lines(_key),
    _insert,
    _encoded,
    _ends,
    _bare,
)
LARGE = (_many_trims, _many_nearby, _long_name, _long_comment, _many_tables, _many_dots)


def broken(seed: str, number: int) -> tuple[str, bytes, bytes]:
    """Name of what was done, the file before and the file after."""
    dice = chance(seed, number)
    paths = sorted((ROOT / "data" / "designs").glob("*.toml"))
    before = (
        dice.choice(paths).read_bytes()
        if dice.random() < 0.3
        else text_of(random_design(seed, number % 100)).encode()
    )
    mutate = LARGE[number // 100 % len(LARGE)] if number % 100 == 99 else dice.choice(USUAL)
    after = mutate(dice, before)
    if mutate in USUAL and dice.random() < 0.3:
        mutate = dice.choice(USUAL)
        after = mutate(dice, after or b"\n\n\n")
    return mutate.__qualname__, before, after


def read(path: Path, how: str) -> Design | None:
    """Load a file inside its second; nothing when it was refused, in one sentence."""
    try:
        with watched():
            return load(path)
    except Slow:
        sure(False, f"slow to load after {how}", path.stat().st_size)
    except InputError as wrong:
        said = str(wrong)
        sure(
            "\n" not in said and len(said) <= LONGEST_SENTENCE,
            "a message of many lines or letters",
            f"{len(said)} letters: {said[:200]!r}",
        )
    return None


def try_one(seed: str, number: int) -> str:
    """One broken file, loaded as a file, and taken up from a folder that keeps work."""
    how, before, after = broken(seed, number)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.toml"
        path.write_bytes(after)
        found = read(path, how)
        if found is not None:
            sure(after.strip(b"\xef\xbb\xbf \r\n\t") != b"", "an empty file was taken for a design")
            sure(
                not (
                    before.startswith(after)
                    and END.encode() in before
                    and END.encode() not in after
                ),
                "a file cut short was taken",
            )
            sure(
                load_text(text_of(found)) == found,
                "a design read from a broken file reads back otherwise",
            )
            solid_and_closed(assess(found).geometry)
        if len(after) < 1_000_000:
            kept(Path(folder), after, found)
    return "refused" if found is None else "read"


def kept(folder: Path, content: bytes, found: Design | None) -> None:
    """A folder that keeps work: what cannot be read is still there under another name, and said."""
    plain = Design()
    session = Session(plain, "US IRC 2021", "feet-inches", folder)
    if found is None:
        sure(
            any(other.read_bytes() == content for other in folder.iterdir()),
            "a kept file that cannot be read is gone",
        )
        sure(session.said != "", "a kept file was set aside without a word")
    else:
        sure(session.design == found, "the folder gives another design than the file")
    session.keep()
    sure(
        load(folder / "design.toml") == session.design,
        "what is kept afterwards reads back otherwise",
    )
