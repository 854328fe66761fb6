"""The validity table: its rows name real functions, and remarks follow it."""

import importlib
import inspect

import numpy as np
import pytest

from rigbuilder.mechanics import validity
from rigbuilder.sources import Kind


@pytest.mark.parametrize("entry", validity.TABLE, ids=lambda row: f"{row.formula}-{row.argument}")
def test_every_row_names_a_function_and_has_a_source(entry: validity.Validity) -> None:
    module, name = entry.formula.split(".")
    function = getattr(importlib.import_module(f"rigbuilder.mechanics.{module}"), name)
    assert inspect.isfunction(function)
    assert entry.lowest < entry.highest
    assert entry.quantity
    assert entry.source.text or entry.source.kind is Kind.PRACTICE


def test_no_row_stands_twice() -> None:
    keys = [(entry.formula, entry.argument) for entry in validity.TABLE]
    assert len(keys) == len(set(keys))


def test_within_the_range_nothing_is_said() -> None:
    assert validity.remarks("cylinder.drag_coefficient", reynolds=np.array([0.1, 20.0, 1000.0])) == ()


@pytest.mark.parametrize("outside", [0.05, 2000.0, float("nan")])
def test_beyond_the_range_a_sentence_names_value_and_range(outside: float) -> None:
    (said,) = validity.remarks("cylinder.drag_coefficient", reynolds=np.array([5.0, outside]))
    assert f"{outside:.4g}" in said
    assert "0.1 to 1000" in said
    assert said.endswith(".")


def test_each_quantity_is_judged_for_itself() -> None:
    said = validity.remarks("water.density", temperature_c=50.0, salinity_g_kg=50.0)
    assert len(said) == 2


def test_clamp_moves_only_what_is_outside() -> None:
    limits = validity.row("water.density", "temperature_c")
    assert limits.clamp([-3.0, 12.0, 90.0]).tolist() == [0.0, 12.0, 35.0]


@pytest.mark.parametrize(("formula", "argument"), [("water.nothing", "x"), ("water.density", "x")])
def test_an_unknown_row_is_a_mistake_of_the_program(formula: str, argument: str) -> None:
    with pytest.raises(KeyError):
        validity.row(formula, argument)
