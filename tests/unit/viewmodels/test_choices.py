"""What the choosers offer, and what a card's words mean among it."""

import pytest

from rigbuilder.model.fields import FIELDS, Holds
from rigbuilder.viewmodels.choices import option_of, options, technique_ids, techniques
from tests.unit.viewmodels.parts import reference

_CHOOSERS = [f.path for f in FIELDS if f.holds in (Holds.CHOICE, Holds.TECHNIQUE, Holds.KNOT)]


@pytest.mark.parametrize("path", _CHOOSERS)
def test_every_option_means_itself_and_none_comes_twice(path: str) -> None:
    offered = options(path, reference())
    values = [value for value, _ in offered]
    assert values
    assert len(values) == len(set(values))
    assert len({text for _, text in offered}) == len(offered)
    assert all(option_of(path, value.upper(), reference()) == value for value in values)


def test_all_techniques_are_offered_by_title() -> None:
    offered = techniques(reference())
    assert len(offered) == 59
    assert [text for _, text in offered] == [text for _, text in technique_ids(reference())]


@pytest.mark.parametrize(
    ("path", "first"), [("knots.arbor", "arbor"), ("leader.knot", "albright"), ("knots.lure", "")]
)
def test_knots_made_for_the_place_stand_first_and_the_others_say_what_for(path: str, first: str) -> None:
    offered = options(path, reference())
    plain = [value for value, text in offered if value == text]
    assert plain
    assert [value for value, _ in offered[: len(plain)]] == plain
    assert all("· for " in text for value, text in offered[len(plain) :])
    assert first in ("", plain[0])


def test_an_unknown_word_means_nothing() -> None:
    assert option_of("lure.technique", "juggling", reference()) == ""
    assert option_of("knots.lure", "bowtie", reference()) == ""
    assert option_of("water.wind", "gale", reference()) == ""
