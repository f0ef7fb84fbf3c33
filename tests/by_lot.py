"""Designs of random answers, each input by a lot of its own, so that a new input moves no other."""

from random import Random

from fireplace_calc import change
from fireplace_calc.base.units import InputError
from fireplace_calc.design.records import Design
from fireplace_calc.editing.changes import all_inputs


def by_lot(seed, leave, share, answer):
    """A design of which ``share(key)`` of the inputs, but for the records in ``leave``, are told what
    ``answer(key, spec, lot)`` says; what is refused stays as it was.
    """
    design = Design()
    for key, spec in all_inputs().items():
        lot = Random(f"{seed} {key}")
        if key.partition(".")[0] in leave or lot.random() > share(key):
            continue
        try:
            design = change(design, {key: answer(key, spec, lot)})
        except InputError:
            continue
    return design
