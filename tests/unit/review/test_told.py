"""A review told as plain data and as a page: the contract of the command, and nothing left out."""

import json
from typing import Any

import pytest

from rigbuilder.model.document import put_all
from rigbuilder.model.reading import Reading, read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.asjson import review_data, rule_data
from rigbuilder.review.engine import Report, review
from rigbuilder.review.explain import example_words, rule_text
from rigbuilder.review.printed import review_text
from rigbuilder.review.proof import proven
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem

WRONG = {"main.type": "fluorocarbon", "main.test": "16 lb", "drag": "30 lb", "backing": None}


def reviewed(technique: str, changes: dict[str, Any]) -> tuple[Reading, Report]:
    reading = read(put_all(usual_document(technique), changes), load())
    assert reading.rig is not None
    return reading, review(reading.rig, load(), House.shipped())


def test_data_keeps_the_contract_and_is_json() -> None:
    data = review_data(*reviewed("frog", WRONG), Speaker())
    assert json.loads(json.dumps(data, allow_nan=False)) == data
    assert {
        "verdict",
        "findings",
        "right",
        "lines",
        "assumed",
        "figures",
        "silenced",
        "checks",
        "cautions",
    } <= set(data)
    assert data["verdict"] == "fault"
    for finding in data["findings"]:
        assert {"rule", "severity", "part", "headline", "why", "numbers", "remedies", "basis"} <= set(finding)
        for number in finding["numbers"]:
            assert number["low"] <= number["typical"] <= number["high"]
        for remedy in finding["remedies"]:
            assert set(remedy) == {"say", "set"}
    ranges = data["figures"]["test_range_lb"]
    assert ranges is None or ranges["low"] <= ranges["aim"] <= ranges["high"]


def test_aim_in_the_data_says_what_moved_it() -> None:
    data = review_data(*reviewed("flip-jig", {"fish.weight": "6 kg"}), Speaker())
    assert data["figures"]["test_range_lb"]["aim"] == 25
    assert any("big fish" in moved["by"] for moved in data["figures"]["test_range_lb"]["moved"])
    assert data["figures"]["leader"]["need"] == "none"


@pytest.mark.parametrize("system", list(UnitSystem))
def test_page_holds_every_reason_check_and_caution(system: UnitSystem) -> None:
    reading, report = reviewed("frog", WRONG)
    say = Speaker(system)
    page = review_text(reading, report, say)
    for finding in report.findings:
        assert finding.headline(say) in page
    assert "By hand, with this rig" in page
    assert "Usual cautions; local rules come first" in page
    assert "Which line suits this rig?" in page


def test_offers_of_one_reason_can_be_told_apart() -> None:
    for technique in ("frog", "walking-bait", "drop-shot", "spinnerbait"):
        reading, report = reviewed(technique, WRONG)
        for finding in report.findings:
            said = [remedy.say for remedy in proven(reading.document, report, finding)]
            assert len(said) == len(set(said)), said


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_rule_is_told_whole_and_in_plain_words(rule: Any) -> None:
    text, data = rule_text(rule), rule_data(rule)
    joined = " ".join(text.split())
    assert data["what"] in joined
    assert data["why"] in joined
    assert "how we know" in text
    assert all(example_words(example) in joined for example in rule.wrong + rule.right)
    assert rule.what.endswith(".")
    assert rule.why.endswith(".")
    assert len(rule.why.split()) >= 12
    assert not any(
        word in f"{rule.what} {rule.why}".lower().split() for word in ("you", "your", "stupid", "lazy")
    )
