"""Many cases, a few of which are unit tests; the others run with everything."""

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
