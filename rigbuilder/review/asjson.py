"""A review as plain data, the way ``review --json`` prints it. Numbers are in SI units."""

from collections.abc import Sequence
from typing import Any

from rigbuilder.model.assume import Assumed
from rigbuilder.model.document import Document
from rigbuilder.model.reading import Reading
from rigbuilder.reference.ranges import Range
from rigbuilder.review.bench_checks import checks_for
from rigbuilder.review.cautions import cautions_for
from rigbuilder.review.chart import Cell, chart
from rigbuilder.review.core import Finding, Number, Rule
from rigbuilder.review.engine import Report
from rigbuilder.review.explain import distinct, example_words
from rigbuilder.review.leader_aim import leader_aim
from rigbuilder.review.proof import proven
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import Source
from rigbuilder.units.dimensions import Dimension

_UNITS = {
    Dimension.LENGTH: "m",
    Dimension.MASS: "kg",
    Dimension.FORCE: "N",
    Dimension.TEMPERATURE: "C",
    Dimension.SPEED: "m/s",
}
_FIGURES = 4
_ENDS = ("low", "aim", "high")


def review_data(reading: Reading, report: Report, speaker: Speaker) -> dict[str, Any]:
    """Return the whole review of a card as plain data."""
    case = report.case
    cells = chart(case.rig, case.reference, case.house, present=report)
    why = {entry.rule: entry.why for entry in case.rig.silenced}
    return {
        "verdict": report.verdict.word,
        "findings": [finding_data(reading.document, report, found, speaker) for found in report.findings],
        "silenced": [
            {
                "rule": found.rule.name,
                "severity": found.severity.word,
                "headline": found.headline(speaker),
                "why": why[found.rule.name],
            }
            for found in report.silenced
        ],
        "right": [{"rule": rule.name, "headline": words} for rule, words in report.right(speaker)],
        "lines": [cell_data(cell, speaker) for cell in cells],
        "assumed": [assumed_data(entry) for entry in reading.assumed],
        "checks": [
            {"check": check.name, "part": str(check.part), "say": check.say, "why": check.why}
            for check in checks_for(case)
        ],
        "cautions": [{"topic": row.topic, "says": row.says} for row in cautions_for(case)],
        "figures": figures_data(report),
    }


def finding_data(document: Document, report: Report, finding: Finding, speaker: Speaker) -> dict[str, Any]:
    """Return one reason with its proven remedies."""
    return {
        "rule": finding.rule.name,
        "severity": finding.severity.word,
        "part": str(finding.part),
        "headline": finding.headline(speaker),
        "why": finding.why(speaker),
        "numbers": [number_data(number) for number in finding.hit.numbers()],
        "remedies": [
            {"say": remedy.say, "set": dict(remedy.set)} for remedy in proven(document, report, finding)
        ],
        "basis": [source_data(source) for source in distinct(finding.sources)],
        "differ": finding.disagreement,
        "house": list(finding.house),
    }


def number_data(number: Number) -> dict[str, Any]:
    """Return one figure."""
    unit = _UNITS.get(number.dimension, "") if number.dimension else ""
    return {"name": number.name, **_rounded(Range(number.low, number.typical, number.high)), "unit": unit}


def source_data(source: Source) -> dict[str, str]:
    """Return one basis."""
    text = ", ".join(part for part in (source.text, source.where) if part)
    return {"kind": str(source.kind), "text": text}


def cell_data(cell: Cell, speaker: Speaker) -> dict[str, Any]:
    """Return one cell of the line chart."""
    because = cell.because
    return {
        "type": str(cell.type),
        "test_lb": round(cell.test_lb, 2),
        "diameter_mm": round(cell.report.case.facts.main_diameter_m.typical * 1000, 3),
        "grade": str(cell.grade),
        "present": cell.present,
        "because": None
        if because is None
        else {"rule": because.rule.name, "headline": because.headline(speaker)},
    }


def assumed_data(entry: Assumed) -> dict[str, Any]:
    """Return one assumption."""
    return {"field": entry.field, "value": entry.value, "why": entry.why}


def figures_data(report: Report) -> dict[str, Any]:
    """Return the figures in short."""
    facts = report.case.facts
    data: dict[str, Any] = {
        "weakest_link": {
            "part": str(facts.weakest.part),
            "name": facts.weakest.name,
            **_rounded(facts.chain_n),
            "unit": "N",
        },
        "chain": [
            {"part": str(link.part), "name": link.name, **_rounded(link.strength_n), "unit": "N",
             "goes_first": round(link.goes_first, 3)}
            for link in facts.links
        ],
        "test_range_lb": _aim(report),
        "leader": _leader(report),
    }  # fmt: skip
    for name, value, unit in (
        ("drag", facts.drag_n, "N"),
        ("hook_force", facts.hook_force_n, "N"),
        ("hook_share_of_usual", facts.hook_share, ""),
        ("depth", facts.depth_m, "m"),
        ("spool_holds", facts.spool_holds_m, "m"),
        ("backing", facts.backing_m, "m"),
        ("main_diameter", facts.main_diameter_m, "m"),
    ):
        if value is not None:
            data[name] = {**_rounded(value), "unit": unit}
    return data


def _aim(report: Report) -> dict[str, Any] | None:
    case = report.case
    aim = case.aim.for_type(case.main.type)
    if aim is None:
        return None
    moves = [move for move in case.aim.moves(case.main.type) if move.steps]
    moved = [{"by": move.state.name, "steps": move.steps} for move in moves]
    return {"low": aim.low_lb, "aim": aim.aim_lb, "high": aim.high_lb, "moved": moved}


def _leader(report: Report) -> dict[str, Any]:
    case = report.case
    aim = leader_aim(case.aim, case.main.type)
    return {
        "need": str(aim.need),
        "materials": [str(kind) for kind in aim.materials],
        "test_lb": None if aim.test_lb is None else dict(zip(_ENDS, aim.test_lb, strict=True)),
        "length_in": None if aim.length_in is None else dict(zip(_ENDS, aim.length_in, strict=True)),
        "moved": sorted({move.state.name for move in aim.test_moves + aim.length_moves}),
        "advice": list(aim.advice),
    }


def _rounded(value: Range) -> dict[str, float]:
    parts: Sequence[float] = (value.low, value.typical, value.high)
    return dict(
        zip(("low", "typical", "high"), (float(f"{part:.{_FIGURES}g}") for part in parts), strict=True)
    )


def rule_data(rule: Rule) -> dict[str, Any]:
    """Return one rule of the book."""
    return {
        "name": rule.name,
        "part": str(rule.part),
        "severity": rule.severity.word,
        "what": rule.what,
        "why": rule.why,
        "basis": [source_data(source) for source in distinct(rule.sources)],
        "wrong": [example_words(example) for example in rule.wrong],
        "right": [example_words(example) for example in rule.right],
        "replaces": list(rule.replaces),
    }
