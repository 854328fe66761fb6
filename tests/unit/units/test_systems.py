"""SI values in the two families of units, rounded as people say them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import parse, show
from rigbuilder.units.systems import UnitSystem, in_system, show_si

IMPERIAL, METRIC = UnitSystem.IMPERIAL, UnitSystem.METRIC

SHOWN = [
    (53.4, Dimension.FORCE, "test", "12 lb", "5.4 kg"),
    (4.45, Dimension.FORCE, "drag", "1 lb", "0.45 kg"),
    (26.7, Dimension.FORCE, "", "6 lb", "2.7 kg"),
    (445.0, Dimension.FORCE, "test", "100 lb", "45 kg"),
    (0.0106, Dimension.MASS, "lure", "3/8 oz", "10.6 g"),
    (0.000886, Dimension.MASS, "lure", "1/32 oz", "0.9 g"),
    (0.01134, Dimension.MASS, "lure", "0.4 oz", "11.3 g"),
    (0.0354, Dimension.MASS, "lure", "1 1/4 oz", "35.4 g"),
    (2.0, Dimension.MASS, "fish", "4.4 lb", "2 kg"),
    (2.2098, Dimension.LENGTH, "rod", "7'3\"", "2.21 m"),
    (2.1336, Dimension.LENGTH, "rod", "7'", "2.13 m"),
    (0.00035, Dimension.LENGTH, "diameter", "0.014 in", "0.35 mm"),
    (0.000165, Dimension.LENGTH, "diameter", "0.0065 in", "0.165 mm"),
    (22.6, Dimension.LENGTH, "cast", "25 yd", "23 m"),
    (1.52, Dimension.LENGTH, "depth", "5 ft", "1.5 m"),
    (109.7, Dimension.LENGTH, "line", "120 yd", "110 m"),
    (0.787, Dimension.LENGTH, "retrieve", "31 in", "79 cm"),
    (0.6, Dimension.LENGTH, "leader", "24 in", "60 cm"),
    (0.07, Dimension.LENGTH, "lure", "2 3/4 in", "70 mm"),
    (18.0, Dimension.TEMPERATURE, "", "64 F", "18 C"),
    (3.0, Dimension.SPEED, "", "6.7 mph", "3 m/s"),
    (0.0, Dimension.FORCE, "", "0 lb", "0 kg"),
    (1.5, Dimension.SIZE, "", "1.5", "1.5"),
]


@pytest.mark.parametrize(("value", "dimension", "kind", "imperial", "metric"), SHOWN)
def test_shows_human_figures(
    value: float, dimension: Dimension, kind: str, imperial: str, metric: str
) -> None:
    assert show_si(value, dimension, IMPERIAL, kind=kind) == imperial
    assert show_si(value, dimension, METRIC, kind=kind) == metric


def test_an_unknown_kind_uses_the_ordinary_style() -> None:
    assert show_si(53.4, Dimension.FORCE, IMPERIAL, kind="pull of a fish") == "12 lb"


@pytest.mark.parametrize("text", ["14-25 lb", "0.28 mm", "7'3\"", "3/8-1 oz"])
@pytest.mark.parametrize("system", list(UnitSystem))
def test_switching_leaves_the_printed_text_alone(text: str, system: UnitSystem) -> None:
    dimension = {"b": Dimension.FORCE, "z": Dimension.MASS}.get(text[-1], Dimension.LENGTH)
    quantity = parse(text, dimension)
    show_si(quantity.si_low, dimension, system)
    assert show(quantity) == text


@given(st.floats(1e-4, 1e3), st.sampled_from(list(Dimension)), st.sampled_from(list(UnitSystem)))
def test_what_is_shown_is_close_to_what_is_meant(
    value: float, dimension: Dimension, system: UnitSystem
) -> None:
    number, symbol = in_system(value, dimension, system)
    shown = show_si(value, dimension, system)
    assert shown.endswith(symbol)
    assert float(shown.split()[0]) == pytest.approx(number, rel=0.07, abs=0.5 if abs(number) > 1 else 0.05)
