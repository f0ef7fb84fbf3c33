"""An address as a square that a tablet's camera reads off the screen of a terminal."""

from __future__ import annotations

from reportlab.graphics.barcode.qrencoder import QRCode, QRErrorCorrectLevel

QUIET = 4
"""Empty modules round the square, as ISO/IEC 18004 asks. [-]"""


def as_text(words: str) -> str:
    """A QR code in half blocks, two rows of it in one line of text; dark on light whatever the
    terminal's colors.

    Parameters
    ----------
    words : str
        What the camera is to read.

    Returns
    -------
    str
        Lines for a terminal that understands ANSI colors.
    """
    code = QRCode(None, QRErrorCorrectLevel.M)
    code.addData(words)
    code.make()
    inside, side = range(code.getModuleCount()), range(-QUIET, code.getModuleCount() + QUIET + 1)

    def dark(row: int, column: int) -> bool:
        return row in inside and column in inside and bool(code.isDark(row, column))

    blocks = {(False, False): " ", (True, False): "▀", (False, True): "▄", (True, True): "█"}
    lines = (
        "".join(blocks[dark(row, column), dark(row + 1, column)] for column in side)
        for row in side[::2]
    )
    return "\n".join(f"\x1b[30;107m{line}\x1b[0m" for line in lines)
