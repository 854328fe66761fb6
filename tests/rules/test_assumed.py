"""What was not said but assumed bears no more than a note, and the program's own assumptions bear none."""

from typing import Any

import pytest

from rigbuilder.model.fields import BY_PATH
from rigbuilder.model.reading import read
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.reference.techniques import LinePractice, Technique
from rigbuilder.reference.words import LineType, Rank
from rigbuilder.review.core import Example, Finding, Rule, Severity
from rigbuilder.review.engine import lay_out, report, review
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.speak import Speaker
from tests.rules.examples import all_examples, document_of, example_id

GRAVE = [
    (rule, example)
    for rule, example in all_examples("wrong")
    if rule.severity > Severity.NOTE and rule.after is None
]


def findings_of(example: Example, unsaid: frozenset[str]) -> dict[str, Finding]:
    """Return the reasons of an example's rig as if these of its fields had only been assumed."""
    rig = read(document_of(example), load()).rig
    assert rig is not None
    case = lay_out([rig.with_(said=rig.said - unsaid)], load(), House.shipped())[0]
    return {finding.rule.name: finding for finding in report(case).findings}


@pytest.mark.parametrize(("rule", "example"), GRAVE, ids=example_id)
def test_a_reason_resting_on_what_was_assumed_is_a_note_and_says_so(rule: Rule, example: Example) -> None:
    said = findings_of(example, frozenset())[rule.name]
    assert not said.assumed
    for path in rule.rests_on + said.hit.rests_on:
        found = findings_of(example, frozenset({path})).get(rule.name)
        if found is None:  # a harsher reason, which does not rest on this, explains it
            continue
        assert found.severity <= Severity.NOTE, path
        if said.severity > Severity.NOTE:
            assert found.assumed == (path,)
            assert BY_PATH[path].label.lower() in found.why(Speaker())


def test_rules_rest_on_fields_that_a_card_may_leave_unsaid() -> None:
    for rule in RULES:
        for path in rule.rests_on:
            assert not BY_PATH[path].required, (rule.name, path)


def test_a_house_cannot_lift_what_was_only_assumed() -> None:
    example = Example("hollow-body frog", {"backing": None})
    name = "braid-on-bare-arbor"
    rig = read(document_of(example), load()).rig
    assert rig is not None
    house = House.read({"severity": {name: "fault"}}, load())
    guessed = rig.with_(said=rig.said - {"backing.type"})
    found = {finding.rule.name: finding for finding in review(guessed, load(), house).findings}
    assert found[name].severity is Severity.NOTE


def minimal_cards() -> list[tuple[str, dict[str, Any]]]:
    """Return the least a card may say, for every technique, line of practice, and end of its range."""
    return [
        (f"{technique.name}, {kind} {test:g} lb, {power} rod", minimal(technique, kind, test, str(power)))
        for technique in load().techniques.values()
        for kind, line in technique.lines.items()
        for test in ends(line)
        for power in dict.fromkeys((technique.rod.powers[0], technique.rod.powers[-1]))
    ]


def ends(line: LinePractice) -> list[float]:
    """Return the lowest and highest test [lb] of a line that practice itself has named."""
    if line.rank not in (Rank.FIRST_CHOICE, Rank.WORKS) or line.derived_default or line.test_lb is None:
        return []
    return sorted({line.test_lb.low, line.test_lb.high})


def minimal(technique: Technique, kind: LineType, test_lb: float, power: str) -> dict[str, Any]:
    """Return a card with the required keys, the presentation, and a rod that practice uses."""
    rod, lures = technique.rod, technique.lure_oz
    return {
        "format": "rigbuilder.card",
        "version": 1,
        "name": "the least that a card may say",
        "presentation": str(technique.presentation),
        "lure": {"technique": technique.name, "weight": f"{(lures.low * lures.high) ** 0.5:.3f} oz"},
        "rod": {
            "line": f"{rod.line_lb.low:g}-{rod.line_lb.high:g} lb",
            "lure": f"{rod.lure_oz.low:g}-{rod.lure_oz.high:g} oz",
            "power": power,
            "action": str(rod.actions[-1]),
        },
        "main": {"type": str(kind), "test": f"{test_lb:g} lb"},
    }


def test_no_line_of_practice_is_accused_on_the_least_card() -> None:
    grave, cards = [], minimal_cards()
    readings = [(name, read(card, load())) for name, card in cards]
    assert not [reading.problems for _, reading in readings if reading.rig is None]
    cases = lay_out([reading.rig for _, reading in readings if reading.rig], load(), House.shipped())
    for (name, _), case in zip(readings, cases, strict=True):
        grave += [
            f"{name}: {found.rule.name}: {found.headline(Speaker())}"
            for found in report(case).findings
            if found.severity > Severity.NOTE
        ]
    assert len(cards) > 500
    assert grave == []
