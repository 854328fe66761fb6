"""Record what the review says of the demo cards: ``python -m tests.golden.record``.

A golden report is a change detector, not evidence: record it anew when a
change was meant, and say in the commit why each line moved.
"""

import json
import sys
from pathlib import Path
from typing import Any

from rigbuilder import resources
from rigbuilder.model.reading import Reading, read_rig
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.asjson import finding_data, review_data
from rigbuilder.review.engine import Report, review
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem

HERE = Path(__file__).parent
_LEFT_OUT = ("figures", "assumed", "checks", "cautions")  # tested where they are made


def demo_cards() -> list[Path]:
    """Return the demo cards that ship."""
    return sorted(Path(resources.path("demo")).rglob("*.rigcard"))


def golden_of(card: Path) -> Path:
    """Return where the report of a card is kept."""
    return HERE / f"{card.stem}.json"


def _reviewed(card: Path) -> tuple[Reading, Report]:
    reading = read_rig(json.loads(card.read_text(encoding="utf-8")), load(), file=card.name)
    assert reading.rig is not None
    return reading, review(reading.rig, load(), House.shipped())


def report_of(card: Path) -> dict[str, Any]:
    """Return what the review says of a card, as plain data."""
    data = review_data(*_reviewed(card), Speaker())
    return {key: value for key, value in data.items() if key not in _LEFT_OUT}


def findings_of(card: Path, system: UnitSystem) -> list[dict[str, Any]]:
    """Return the reasons alone, with figures in this unit system."""
    reading, report = _reviewed(card)
    return [finding_data(reading.document, report, finding, Speaker(system)) for finding in report.findings]


def main() -> None:
    """Write the report of every demo card."""
    for card in demo_cards():
        text = json.dumps(report_of(card), indent=1, ensure_ascii=False) + "\n"
        golden_of(card).write_text(text, encoding="utf-8")
        print(golden_of(card).name)


if __name__ == "__main__":
    sys.exit(main())
