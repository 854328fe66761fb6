"""The demo cards' reports stand as recorded, and every message keeps to the convention."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from rigbuilder.units.systems import UnitSystem
from tests.golden.record import demo_cards, findings_of, golden_of, report_of

CARDS = demo_cards()
LONGEST = 90
UNIT = re.compile(r"\d\s?(?:lb|kg|oz|g|N|ft|in|yd|m|cm|mm|%|°[CF]|:1)\b|\d %|\d'|\d\"")


def _name(card: Path) -> str:
    return card.stem


@pytest.mark.parametrize("card", CARDS, ids=_name)
def test_report_is_as_recorded(card: Path) -> None:
    recorded = json.loads(golden_of(card).read_text(encoding="utf-8"))
    assert json.loads(json.dumps(report_of(card))) == recorded


def test_no_golden_report_is_left_without_its_card() -> None:
    assert {golden_of(card) for card in CARDS} == set(Path(__file__).parent.glob("*.json"))


def _findings() -> list[tuple[str, dict[str, Any]]]:
    return [
        (f"{card.stem}/{finding['rule']}/{system.value}", finding)
        for card in CARDS
        for system in UnitSystem
        for finding in findings_of(card, system)
    ]


FINDINGS = _findings()


@pytest.mark.parametrize("finding", [found for _, found in FINDINGS], ids=[name for name, _ in FINDINGS])
def test_message_keeps_to_the_convention(finding: dict[str, Any]) -> None:
    """Headline: short, lower case, no full stop, both figures with units; then why, remedy, how we know."""
    headline, why = finding["headline"], finding["why"]
    assert 8 <= len(headline) <= LONGEST, headline
    assert not headline.endswith("."), headline
    assert not headline[0].isupper(), headline
    assert why.endswith("."), why
    assert finding["basis"], finding["rule"]
    for blame in ("you ", "your ", "wrongly", "mistake", "stupid", "bad "):
        assert blame not in f"{headline} {why} ".lower(), headline
    if finding["numbers"]:
        assert UNIT.search(headline), headline
