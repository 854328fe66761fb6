"""Counting misses and false alarms over the blind rigs, the way their README says."""

import json
import sys
from collections import Counter
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from rigbuilder.model.reading import read
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.core import Severity
from rigbuilder.review.engine import Report, review
from rigbuilder.review.speak import Speaker

RIGS = Path(__file__).parent / "rigs.json"


@dataclass(frozen=True)
class Outcome:
    """One difference between what was expected of a rig and what the review says."""

    kind: str
    name: str
    part: str
    expected: str
    found: str


def cases(path: Path = RIGS) -> list[dict[str, Any]]:
    """Return the blind rigs of one file."""
    found: list[dict[str, Any]] = json.loads(path.read_text(encoding="utf-8"))
    return found


def outcomes(case: dict[str, Any]) -> list[Outcome]:
    """Return every miss, wrong weight and false alarm of one rig; an empty list is a pass."""
    reading = read(case["card"], load())
    if reading.rig is None:
        return [Outcome("unreadable", case["name"], "", "", "; ".join(map(str, reading.problems)))]
    report = review(reading.rig, load(), House.shipped())
    if case["expect"].get("must_not_fault"):
        return _false_alarms(case, report, Severity.RISK, set())
    found: list[Outcome] = []
    named: set[str] = set()
    for must in case["expect"].get("must", ()):
        parts = {must["part"], *must.get("or_parts", ())}
        named |= parts
        found += _miss(case, report, must, parts)
    return found + _false_alarms(case, report, Severity.FAULT, named)


def _words(report: Report) -> str:
    say = Speaker()
    return " | ".join(f"{f.severity.word} {f.part} {f.rule.name}: {f.headline(say)}" for f in report.findings)


def _miss(case: dict[str, Any], report: Report, must: dict[str, Any], parts: set[str]) -> list[Outcome]:
    wanted = {must["severity"], *must.get("or_severities", ())}
    there = [f for f in report.findings if str(f.part) in parts]
    if any(f.severity.word in wanted for f in there):
        return []
    kind = "wrong weight" if there else "miss"
    expected = f"{'/'.join(sorted(wanted))}: {must['about']}"
    return [Outcome(kind, case["name"], must["part"], expected, _words(report))]


def _false_alarms(case: dict[str, Any], report: Report, least: Severity, named: set[str]) -> list[Outcome]:
    return [
        Outcome("false alarm", case["name"], str(f.part), f"below {least.word}",
                f"{f.severity.word} {f.rule.name}: {f.headline(Speaker())}")
        for f in report.findings
        if f.severity >= least and str(f.part) not in named
    ]  # fmt: skip


def table(path: Path = RIGS) -> str:
    """Return misses, wrong weights and false alarms by part, and each of them."""
    rigs = cases(path)
    found = [outcome for case in rigs for outcome in outcomes(case)]
    counts = Counter((outcome.kind, outcome.part) for outcome in found)
    lines = [f"{len(rigs)} rigs, {len({o.name for o in found})} not as expected"]
    lines += [f"  {kind:13} {part:9} {count}" for (kind, part), count in sorted(counts.items())]
    lines += [
        f"{o.kind:13} {o.part:8} {o.name}\n    expected {o.expected}\n    found {o.found}" for o in found
    ]
    return "\n".join(lines)


if __name__ == "__main__":
    print(table(*map(Path, sys.argv[1:2])))
