"""Figures of a reason as words."""

from rigbuilder.reference.ranges import Range, Span
from rigbuilder.review.core import Number
from rigbuilder.review.explain import number_words
from rigbuilder.review.speak import Speaker
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.systems import UnitSystem

_LBF_N = 4.4482216  # pound-force, avoirdupois pound times standard gravity


def test_a_printed_range_is_said_by_its_ends_alone() -> None:
    label = Number.between("rod's line range", Span(30 * _LBF_N, 65 * _LBF_N), Dimension.FORCE, "test")
    assert number_words(label, Speaker()) == "rod's line range: 30–65 lb"
    assert number_words(label, Speaker(UnitSystem.METRIC)) == "rod's line range: 14–29 kg"


def test_a_computed_range_says_its_typical_value_first() -> None:
    pull = Number.of("what it bears", Range(10 * _LBF_N, 12 * _LBF_N, 13 * _LBF_N), Dimension.FORCE, "drag")
    assert number_words(pull, Speaker()) == "what it bears: 12 lb (10 lb to 13 lb)"
