"""The numbers of the reasons: the same on the cards and on the pins of the drawing."""

from rigbuilder.model.fields import Part
from rigbuilder.review.engine import Report

_WORDS = {Part.MAIN: "main line"}
_FIELDS = {
    Part.LURE: "lure.technique",
    Part.ROD: "rod.label",
    Part.REEL: "reel.label",
    Part.MAIN: "main.type",
    Part.BACKING: "backing.type",
    Part.LEADER: "leader.type",
    Part.KNOTS: "knots.lure",
    Part.DRAG: "drag",
    Part.WATER: "water.clarity",
}


def numbering(report: Report | None) -> dict[str, int]:
    """Return the number of each reason by the name of its rule, from 1 for the worst."""
    if report is None:
        return {}
    return {finding.rule.name: number for number, finding in enumerate(report.findings, start=1)}


def part_words(part: Part) -> str:
    """Return a part of the rig as people call it."""
    return _WORDS.get(part, str(part))


def first_field(part: Part) -> str:
    """Return the card path of the field that a link to a part leads to."""
    return _FIELDS[part]
