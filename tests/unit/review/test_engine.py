"""The review as a whole: order, one cause one reason, silencing."""

from typing import Any

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.core import Severity
from rigbuilder.review.engine import Report, review
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.speak import Speaker


def reported(technique: str, changes: dict[str, Any]) -> Report:
    """Review the usual rig with changes."""
    rig = read(put_all(usual_document(technique), changes), load()).rig
    assert rig is not None
    return review(rig, load(), House.shipped())


def names(report: Report) -> list[str]:
    return [finding.rule.name for finding in report.findings]


def test_worst_reason_comes_first() -> None:
    report = reported("frog", {"backing": None, "drag": "1 lb", "rod.power": "light"})
    severities = [finding.severity for finding in report.findings]
    assert severities == sorted(severities, reverse=True)
    assert report.verdict is severities[0] is Severity.FAULT


@pytest.mark.parametrize(
    ("technique", "changes", "kept", "dropped"),
    [
        ("walking-bait", {"main.type": "fluorocarbon", "main.test": "15 lb", "leader": None},
         "sinking-line-on-surface-lure", "line-wrong-for-technique"),
        ("texas-open", {"main.condition": "kinked"}, "line-kinked", "drag-above-weakest-link"),
        ("drop-shot", {"drag": "30 lb"}, "drag-above-weakest-link", "drag-above-practice"),
        ("flip-jig", {"rod.label": "7'0\" L F 14-30 lb 3/8-1 1/2 oz"}, "rod-too-soft-for-hook",
         "rod-power-unusual"),
        ("swim-jig", {"backing.type": "lead-core", "backing.test": "18 lb"}, "lead-core-as-backing",
         "backing-joint-wrong"),
    ],
)  # fmt: skip
def test_one_cause_gives_one_reason(technique: str, changes: dict[str, Any], kept: str, dropped: str) -> None:
    found = names(reported(technique, changes))
    assert kept in found
    assert dropped not in found


def test_replaced_rules_exist_and_none_replaces_itself() -> None:
    known = {rule.name for rule in RULES}
    for rule in RULES:
        assert set(rule.replaces) <= known - {rule.name}


SILENCED = [{"rule": "braid-on-bare-arbor", "why": "taped spool"}]


def test_silenced_reason_is_set_aside_and_kept() -> None:
    report = reported("frog", {"backing": None, "silenced": SILENCED})
    assert "braid-on-bare-arbor" not in names(report)
    assert [finding.rule.name for finding in report.silenced] == ["braid-on-bare-arbor"]
    assert "silencing-without-effect" not in names(report)


@pytest.mark.parametrize("rule", ["braid-on-bare-arbor", "no-such-rule"])
def test_silencing_that_silences_nothing_is_a_note(rule: str) -> None:
    report = reported("frog", {"silenced": [{"rule": rule, "why": "left over"}]})
    (finding,) = [found for found in report.findings if found.rule.name == "silencing-without-effect"]
    assert finding.severity is Severity.NOTE
    assert rule in finding.headline(Speaker())


def test_what_is_right_is_said_and_never_contradicts_a_reason() -> None:
    right = {rule.name for rule, _ in reported("frog", {}).right(Speaker())}
    assert {"line-wrong-for-technique", "braid-on-bare-arbor", "drag-above-weakest-link"} <= right
    loose = reported("frog", {"drag": "1 lb"})
    assert "drag-above-weakest-link" not in {rule.name for rule, _ in loose.right(Speaker())}
