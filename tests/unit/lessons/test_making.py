"""Rigs for lessons: from a card as it is, or spoilt so that exactly the wished rule speaks."""

import pytest

from rigbuilder.lessons.making import from_card, rules_for, spoilt
from tests.unit.lessons.cases import HOUSE, card, reference


def test_a_card_means_what_the_review_says_of_it() -> None:
    wrong = from_card(card("carolina", leader__test="25 lb"), reference(), HOUSE)
    right = from_card(card("carolina"), reference(), HOUSE)
    assert wrong is not None
    assert right is not None
    assert wrong.meant == ("leader-stronger-than-main",)
    assert right.meant == ()
    assert from_card({"name": "half"}, reference(), HOUSE) is None


@pytest.mark.parametrize(
    ("technique", "rule"),
    [
        ("frog", "braid-on-bare-arbor"),
        ("carolina", "leader-stronger-than-main"),
        ("texas-open", "line-kinked"),
        ("walking-bait", "sinking-line-on-surface-lure"),
    ],
)
def test_exactly_the_wished_rule_speaks_and_that_is_shown(technique: str, rule: str) -> None:
    made = spoilt(technique, rule, 5, reference(), HOUSE)
    assert made is not None
    assert made.check.is_as_meant
    assert made.rig.meant == (rule,)
    assert made.changes
    again = spoilt(technique, rule, 5, reference(), HOUSE)
    assert again is not None
    assert again.rig == made.rig


def test_a_mistake_that_cannot_be_made_gives_nothing() -> None:
    assert spoilt("ned", "sinking-line-on-surface-lure", 1, reference(), HOUSE) is None


def test_the_mistakes_of_a_technique_are_those_that_can_be_made() -> None:
    names = {rule.name for rule in rules_for("drop-shot", reference(), HOUSE, 1)}
    assert "leader-outgrows-braid" in names
    assert "sinking-line-on-surface-lure" not in names
