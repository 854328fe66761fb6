"""Whole answers for the terminal: a card's review, a label, a technique."""

import textwrap

from rigbuilder.model.labels.understood import Understanding
from rigbuilder.model.reading import Reading
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.texts import Caution
from rigbuilder.reference.words import Rank
from rigbuilder.review.bench_checks import checks_for
from rigbuilder.review.cautions import cautions_for
from rigbuilder.review.chart import Cell, Grade, chart
from rigbuilder.review.engine import Report
from rigbuilder.review.explain import finding_text, verdict_words
from rigbuilder.review.proof import proven
from rigbuilder.review.speak import Speaker

_MARK = {Grade.FIRST_CHOICE: "*", Grade.WORKS: "+", Grade.POOR: "-", Grade.NEVER: "x"}
_WIDTH = 100


def review_text(reading: Reading, report: Report, speaker: Speaker) -> str:
    """Return a review as a page of text: reasons, what is right, the line chart, what was assumed."""
    case = report.case
    blocks = [
        f"{case.rig.name}: {verdict_words([finding.severity for finding in report.findings])}",
        *(finding_text(found, proven(reading.document, report, found), speaker) for found in report.findings),
    ]
    right = [f"  {words}" for _, words in report.right(speaker)]
    if right:
        blocks.append("\n".join(["What is right", *right]))
    if report.silenced:
        why = {entry.rule: entry.why for entry in case.rig.silenced}
        hushed = [
            f"  {found.rule.name}: {found.headline(speaker)} (silenced: {why[found.rule.name]})"
            for found in report.silenced
        ]
        blocks.append("\n".join(["Silenced on this card", *hushed]))
    blocks.append(chart_text(chart(case.rig, case.reference, case.house, present=report)))
    if reading.assumed:
        assumed = [
            f"  {entry.field}: {'none' if entry.value is None else entry.value} ({entry.why})"
            for entry in reading.assumed
        ]
        blocks.append("\n".join(["Assumed, since the card does not say", *assumed]))
    blocks.append("\n".join(["By hand, with this rig", *(f"  {check.say}" for check in checks_for(case))]))
    blocks.append("\n".join(["Usual cautions; local rules come first", *map(_caution, cautions_for(case))]))
    return "\n\n".join(blocks)


def _caution(caution: Caution) -> str:
    text = f"{caution.topic}: {caution.says}"
    return textwrap.fill(text, _WIDTH, initial_indent="  ", subsequent_indent="    ")


def chart_text(cells: list[Cell]) -> str:
    """Return the line chart as text: a row for each type, a mark for each test."""
    legend = ", ".join(f"{mark} {grade}" for grade, mark in _MARK.items())
    lines = [f"Which line suits this rig? ({legend}; the present line in brackets)"]
    for kind in dict.fromkeys(cell.type for cell in cells):
        marks = [
            f"[{cell.test_lb:g}{_MARK[cell.grade]}]"
            if cell.present
            else f"{cell.test_lb:g}{_MARK[cell.grade]}"
            for cell in cells
            if cell.type is kind
        ]
        lines.append(f"  {kind:13} {' '.join(marks)}")
    return "\n".join(lines)


def label_text(understanding: Understanding) -> str:
    """Return what was understood of a label, part by part."""
    lines = [f"{part.key}: {part.meaning}" for part in understanding.parts]
    lines += [f"not understood: {text}" for text in understanding.not_understood]
    lines += [f"doubtful: {doubt.text} ({doubt.why})" for doubt in understanding.doubtful]
    return "\n".join(lines) or "nothing was understood"


def technique_text(technique: Technique) -> str:
    """Return a technique in one line: its name and the lines that practice puts on first."""
    first = [
        f"{kind} {line.test_lb.low:g}-{line.test_lb.high:g} lb"
        for kind, line in technique.lines.items()
        if line.rank is Rank.FIRST_CHOICE and line.test_lb is not None
    ]
    return f"{technique.name}: {', '.join(first)}"
