"""Many cases, a few of which run with every change; the others by hand, with ``WHOLE=1``."""

import pytest


def sampled(cases, few):
    """The cases of a parametrized test: the first few as they are, the others marked ``whole``."""
    return [
        pytest.param(
            *(case if isinstance(case, tuple) else (case,)),
            marks=() if number < few else pytest.mark.whole,
        )
        for number, case in enumerate(cases)
    ]
