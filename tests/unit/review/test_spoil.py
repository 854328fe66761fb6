"""A right rig spoilt in one thing: the meant reason appears and no fault of another kind."""

import random

import pytest

from rigbuilder.model.document import differences
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.core import Severity
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.spoil import FAMILIES, Spoilt, spoil

# Every rule once, on a technique that is drawn: the whole table is printed by
# ``python -m tests.benchmarks.table_spoil``.
_DRAW = random.Random(7)
HOME = {rule.name: load().technique(rule.wrong[0].technique).id for rule in RULES}
DRAWN = _DRAW.sample([(technique, rule.name) for technique in load().techniques for rule in RULES], 25)


def spoilt(technique: str, rule: str, seed: int = 0) -> Spoilt | None:
    return spoil(technique, rule, seed, load(), House.shipped())


def test_every_rule_has_its_families() -> None:
    assert set(FAMILIES) == {rule.name for rule in RULES}


@pytest.mark.parametrize("rule", sorted(HOME))
def test_every_rule_can_be_caused_by_a_change_of_the_card(rule: str) -> None:
    found = spoilt(HOME[rule], rule)
    assert found is not None
    _is_as_meant(found, HOME[rule])


@pytest.mark.parametrize(("technique", "rule"), DRAWN)
def test_drawn_pairs_are_as_meant_or_impossible(technique: str, rule: str) -> None:
    found = spoilt(technique, rule)
    if found is not None:
        _is_as_meant(found, technique)


def _is_as_meant(found: Spoilt, technique: str) -> None:
    names = [finding.rule.name for finding in found.report.findings]
    assert found.rule.name in names
    others = [finding for finding in found.report.findings if finding.rule is not found.rule]
    assert not [finding.rule.name for finding in others if finding.severity is Severity.FAULT]
    changed = {path for path, _, _ in differences(usual_document(technique), found.document)}
    assert changed
    assert all(any(_meets(path, key) for key in found.changes) for path in changed)


def _meets(path: str, key: str) -> bool:
    return path == key or path.startswith(f"{key}.") or key.startswith(f"{path}.")


def test_same_seed_gives_the_same_card_and_seeds_differ() -> None:
    first = [spoilt("drop-shot", "drag-above-practice", seed) for seed in range(6)]
    again = [spoilt("drop-shot", "drag-above-practice", seed) for seed in range(6)]
    documents = [found.document for found in first if found is not None]
    assert documents == [found.document for found in again if found is not None]
    assert len({str(document) for document in documents}) > 1


def test_rule_that_no_change_can_cause_there_gives_none() -> None:
    assert spoilt("drop-shot", "loop-knot-over-large-trebles") is None
    assert spoilt("flip-jig", "sinking-line-on-surface-lure") is None


def test_unknown_names_are_refused() -> None:
    with pytest.raises(KeyError):
        spoilt("drop-shot", "no-such-rule")
    with pytest.raises(KeyError):
        spoilt("no-such-technique", "line-kinked")
