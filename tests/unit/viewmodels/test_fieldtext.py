"""A bare number gets the unit that the field shows; everything else stays as typed."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.model.fields import FIELDS, Holds
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.fieldtext import card_text, is_bare, offered_unit, reads
from tests.unit.viewmodels.parts import reference

LB, KG = UnitSystem.IMPERIAL, UnitSystem.METRIC


@pytest.mark.parametrize(
    ("path", "typed", "system", "text"),
    [
        ("main.test", "16", LB, "16 lb"),
        ("main.test", "7", KG, "7 kg"),
        ("main.test", "16 lb", KG, "16 lb"),
        ("main.test", "PE 1.5", LB, "PE 1.5"),
        ("main.test", "No. 3", LB, "No. 3"),
        ("lure.weight", "5/8", LB, "5/8 oz"),
        ("lure.weight", "1 1/4", LB, "1 1/4 oz"),
        ("lure.weight", "18", KG, "18 g"),
        ("lure.depth", "3-5", LB, "3-5 ft"),
        ("main.diameter", "0,28", LB, "0,28 mm"),
        ("main.diameter", "0,28 mm", KG, "0,28 mm"),
        ("rod.length", "7'3\"", KG, "7'3\""),
        ("reel.ratio", "7.1", LB, "7.1:1"),
        ("reel.ratio", "7,1", LB, "7,1:1"),
        ("reel.ratio", "7.1:1", LB, "7.1:1"),
        ("water.temperature", "20", KG, "20 C"),
        ("water.temperature", "68", LB, "68 F"),
        ("main.test", "16 l", LB, "16 l"),
        ("main.test", " 16 ", LB, "16 lb"),
        ("main.test", "", LB, ""),
        ("lure.trailer", "none", LB, None),
        ("lure.trailer", "None", KG, None),
        ("main.test", "none", LB, "none"),
        ("reel.size", "2500", LB, "2500"),
    ],
)
def test_what_goes_on_the_card(path: str, typed: str, system: UnitSystem, text: str | None) -> None:
    assert card_text(path, typed, system) == text


@pytest.mark.parametrize(
    ("path", "typed", "makes_sense"),
    [
        ("main.test", "16 lb", True),
        ("main.test", "16 l", False),
        ("main.test", "", False),
        ("main.diameter", "", True),
        ("main.type", "braid", True),
        ("main.type", "brade", False),
        ("reel.ratio", "7.1:1", True),
        ("reel.ratio", "71", False),
    ],
)
def test_what_makes_sense_in_a_field(path: str, typed: str, makes_sense: bool) -> None:
    assert reads(path, typed, reference()) is makes_sense


@pytest.mark.parametrize("system", list(UnitSystem))
@pytest.mark.parametrize("field", [field for field in FIELDS if field.dimension is not None], ids=str)
def test_every_measure_offers_a_unit_in_both_systems(field: object, system: UnitSystem) -> None:
    path = str(getattr(field, "path", ""))
    assert offered_unit(path, system)
    assert is_bare(path, "3", system)
    assert not is_bare(path, f"3 {offered_unit(path, system)}", system)


@given(
    field=st.sampled_from(
        [f for f in FIELDS if f.holds in (Holds.QUANTITY, Holds.SPAN, Holds.TEST, Holds.RATIO)]
    ),
    typed=st.text(max_size=12),
    system=st.sampled_from(UnitSystem),
)
@settings(max_examples=150)
def test_what_is_on_the_card_goes_there_unchanged_in_either_system(
    field: object, typed: str, system: UnitSystem
) -> None:
    path = str(getattr(field, "path", ""))
    once = card_text(path, typed, system)
    if once is not None:
        assert {card_text(path, once, each) for each in UnitSystem} == {once} or not reads(
            path, once, reference()
        )
