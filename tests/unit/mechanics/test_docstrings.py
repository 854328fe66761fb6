"""Every public formula says what it takes, in which unit, and how it is known.

The mechanism around the formulas (errors, validity table, array type, ranges) is not checked here.
"""

import importlib
import inspect
import pkgutil
import re
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from rigbuilder import mechanics

MECHANISM = {"errors", "validity", "arrays", "uncertainty"}
KINDS = re.compile(r"\b(PUBLISHED|COMMON PRACTICE|MEMORY|DERIVED|COMPUTED)\b")
HEADING = re.compile(r"^(?P<name>[A-Z][A-Za-z ]+)\n-{3,}\s*$", re.MULTILINE)
UNIT = re.compile(r"\[[^\[\]]+\]$")


def public_functions() -> Iterator[tuple[str, Callable[..., Any]]]:
    for module_info in pkgutil.iter_modules(mechanics.__path__):
        if module_info.name in MECHANISM:
            continue
        module = importlib.import_module(f"rigbuilder.mechanics.{module_info.name}")
        for name, function in inspect.getmembers(module, inspect.isfunction):
            if function.__module__ == module.__name__ and not name.startswith("_"):
                yield f"{module_info.name}.{name}", function


FUNCTIONS = dict(public_functions())


def sections(function: Callable[..., Any]) -> dict[str, str]:
    """Text of each section of a docstring by its heading."""
    text = inspect.getdoc(function) or ""
    found = list(HEADING.finditer(text))
    starts = [match.start() for match in found] + [len(text)]
    return {
        match["name"]: text[match.end() : end].strip() for match, end in zip(found, starts[1:], strict=True)
    }


def entries(section: str) -> dict[str, str]:
    """Description of each entry of a section: "names : type" or a type, then indented lines."""
    found: dict[str, str] = {}
    heading = ""
    for line in section.splitlines():
        if line and not line.startswith(" "):
            heading = line.split(" : ")[0].strip()
            found[heading] = ""
        elif line.strip():
            found[heading] = f"{found[heading]} {line.strip()}".strip()
    return found


def faults(function: Callable[..., Any]) -> list[str]:
    """What a docstring or signature lacks, in words."""
    parts = sections(function)
    described = entries(parts.get("Parameters", ""))
    names = [name.strip() for heading in described for name in heading.split(",")]
    parameters = inspect.signature(function).parameters
    found = [f"{name} is not keyword-only" for name, p in parameters.items() if p.kind is not p.KEYWORD_ONLY]
    if names != list(parameters):
        found.append(f"parameters {list(parameters)} are described as {names}")
    returned = entries(parts.get("Returns", ""))
    if not returned:
        found.append("says nothing about what it returns")
    for heading, text in (described | {f"return {key}": value for key, value in returned.items()}).items():
        if not UNIT.search(text):
            found.append(f"{heading} ends without a [unit]")
    if not KINDS.search(parts.get("References", "")):
        found.append("has no References that name a kind of knowledge")
    return found


def test_there_is_something_to_check() -> None:
    assert {"shape.steady_shape", "cylinder.drag_coefficient", "water.density"} <= set(FUNCTIONS)
    assert len(FUNCTIONS) > 40


@pytest.mark.parametrize("name", FUNCTIONS)
def test_docstring(name: str) -> None:
    assert faults(FUNCTIONS[name]) == []


def complete(*, length_m: float, speed_m_s: float) -> float:
    """Time.

    Parameters
    ----------
    length_m : float
        Way. [m]
    speed_m_s : float
        Speed, more than 0. [m/s]

    Returns
    -------
    float
        Time. [s]

    References
    ----------
    DERIVED: length over speed.
    """
    return length_m / speed_m_s


def positional(length_m: float) -> float:
    """Nothing said."""
    return length_m


def misnamed(*, length_m: float, speed_m_s: float) -> float:
    """Time.

    Parameters
    ----------
    length_m : float
        Way, without its unit.
    velocity : float
        Speed. [m/s]

    Returns
    -------
    float
        Time.

    References
    ----------
    Somebody said so.
    """
    return length_m / speed_m_s


def test_the_check_sees_what_is_missing() -> None:
    assert faults(complete) == []
    assert "length_m is not keyword-only" in faults(positional)
    assert "says nothing about what it returns" in faults(positional)
    assert faults(misnamed) == [
        "parameters ['length_m', 'speed_m_s'] are described as ['length_m', 'velocity']",
        "length_m ends without a [unit]",
        "return float ends without a [unit]",
        "has no References that name a kind of knowledge",
    ]
