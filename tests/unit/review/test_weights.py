"""How heavily single mistakes weigh, and what no longer counts as one: common practice, no source."""

from typing import Any

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.engine import review

KINK, RETIED = {"on": "2026-05-02", "what": "kink found"}, {"on": "2026-05-02", "what": "retied"}


def weight_of(rule: str, technique: str, changes: dict[str, Any]) -> str:
    """Return how heavily one rule weighs on a usual rig with changes; ``right`` where it is silent."""
    rig = read(put_all(usual_document(technique), changes), load()).rig
    assert rig is not None
    findings = review(rig, load(), House.shipped()).findings
    return next((found.severity.word for found in findings if found.rule.name == rule), "right")


@pytest.mark.parametrize(
    ("rule", "technique", "changes", "weight"),
    [
        ("joint-wrong-for-lines", "drop-shot", {"leader.knot": "blood"}, "risk"),
        ("joint-passes-guides", "carolina", {"leader.length": "120 in"}, "risk"),
        ("damage-not-cut-back", "spinnerbait", {"log": [KINK]}, "risk"),
        ("damage-not-cut-back", "spinnerbait", {"log": [KINK, RETIED]}, "right"),
        ("damage-not-cut-back", "spinnerbait", {"log": [RETIED, KINK]}, "risk"),
        ("line-cannot-cut-grass", "punching", {"main.type": "copolymer", "main.test": "30 lb"}, "fault"),
        ("line-cannot-cut-grass", "punching", {"main.type": "fluorocarbon", "main.test": "25 lb"}, "risk"),
        ("line-cannot-cut-grass", "punching", {"main.type": "fluorocarbon", "main.test": "20 lb"}, "fault"),
        ("leader-stronger-than-main", "catfish", {"main.type": "nylon", "main.test": "25 lb"}, "right"),
        ("line-too-thin-for-casting-reel", "walleye-troll", {"main.type": "braid"}, "right"),
        ("drag-too-loose", "frog", {"main.type": "nylon", "main.test": "25 lb", "drag": "6 lb"}, "right"),
        ("test-below-practice", "flip-jig", {"main.test": "10 lb", "fish.weight": "600 g"}, "risk"),
    ],
)  # fmt: skip
def test_mistakes_weigh_what_practice_says(
    rule: str, technique: str, changes: dict[str, Any], weight: str
) -> None:
    assert weight_of(rule, technique, changes) == weight
