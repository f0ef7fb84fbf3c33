"""Docstrings of public functions give the unit of every number, and name every parameter they have."""

import importlib
import inspect
import pkgutil
import re

import pytest

import fireplace_calc

FORMULA_ROOMS = (
    "fireplace_calc.base.units",
    "fireplace_calc.geometry.frame",
    "fireplace_calc.geometry.solids",
    "fireplace_calc.geometry.builder",
)


def public_functions():
    for info in pkgutil.walk_packages(fireplace_calc.__path__, "fireplace_calc."):
        if info.name.endswith("__main__"):
            continue
        module = importlib.import_module(info.name)
        for name, thing in vars(module).items():
            if (
                inspect.isfunction(thing)
                and thing.__module__ == info.name
                and not name.startswith("_")
            ):
                yield pytest.param(thing, id=f"{info.name}.{name}")


@pytest.mark.parametrize("function", list(public_functions()))
def test_public_functions_say_what_they_are(function):
    text = inspect.getdoc(function)
    assert text and len(text.split("\n")[0]) > 10, "a first sentence"


@pytest.mark.parametrize("function", list(public_functions()))
def test_parameter_sections_agree_with_the_signature(function):
    text = inspect.getdoc(function) or ""
    if "Parameters\n" not in text:
        return
    block = text.split("Parameters\n", 1)[1].split("\n\n", 1)[0]
    named = {
        n.strip()
        for line in re.findall(r"^([\w, *]+) : ", block, re.MULTILINE)
        for n in line.replace("*", "").split(",")
    }
    assert named == set(inspect.signature(function).parameters)
