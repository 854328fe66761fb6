"""Refusals name the quantity, what was found and what is possible."""

import math

import numpy as np
import pytest

from rigbuilder.mechanics.errors import ImpossibleInput, require


@pytest.mark.parametrize(
    ("bounds", "value", "sentence"),
    [
        ({"above": 0.0}, 0.0, "The line diameter in m cannot be 0: it must be more than 0."),
        ({"at_least": 0.0}, -1.5, "The line diameter in m cannot be -1.5: it must be at least 0."),
        (
            {"above": 0.0, "at_most": 1.0},
            2.0,
            "The line diameter in m cannot be 2: it must be more than 0 and at most 1.",
        ),
        ({"below": 3.0}, 3.0, "The line diameter in m cannot be 3: it must be less than 3."),
        ({}, math.nan, "The line diameter in m cannot be nan: it must be a finite number."),
        ({"above": 0.0}, math.inf, "The line diameter in m cannot be inf: it must be more than 0."),
    ],
)
def test_a_refusal_is_a_plain_sentence(bounds: dict[str, float], value: float, sentence: str) -> None:
    with pytest.raises(ImpossibleInput) as refused:
        require(quantity="line diameter in m", value=value, **bounds)
    assert str(refused.value) == sentence
    assert isinstance(refused.value, ValueError)


def test_the_first_impossible_value_of_an_array_is_named() -> None:
    with pytest.raises(ImpossibleInput) as refused:
        require(quantity="speed in m/s", value=np.array([1.0, -2.0, -3.0]), at_least=0.0)
    assert refused.value.value == -2.0


def test_possible_values_pass() -> None:
    require(quantity="speed in m/s", value=[0.0, 1.0], at_least=0.0, at_most=1.0)
