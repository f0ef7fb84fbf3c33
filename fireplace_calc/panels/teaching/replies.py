"""What is answered to a student, said aloud by a screen reader when it comes."""

from __future__ import annotations

from html import escape

from fireplace_calc.lessons import Reply


def reply_html(reply: Reply) -> str:
    """Right or wrong, by sign and word, and why."""
    return _aloud(
        f"{'✓' if reply.right else '✗'} {reply.text}", "right" if reply.right else "wrong"
    )


def prompt_html(text: str) -> str:
    """Something to do first."""
    return _aloud(text, "")


def _aloud(text: str, kind: str) -> str:
    return f'<div class="reply {kind}" role="status" aria-live="polite">{escape(text)}</div>'
