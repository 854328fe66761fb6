"""Hints in steps: which part, which figure, which question. A right rig has its three steps as well."""

from collections.abc import Mapping

from rigbuilder.model.fields import Part
from rigbuilder.review.core import Finding
from rigbuilder.review.engine import Report
from rigbuilder.review.explain import number_words
from rigbuilder.review.questions.answer import Question
from rigbuilder.review.speak import Speaker

_PART_WORDS: Mapping[Part, str] = {
    Part.LURE: "the lure and its hook",
    Part.ROD: "the rod",
    Part.REEL: "the reel",
    Part.MAIN: "the main line",
    Part.BACKING: "what lies under the main line",
    Part.LEADER: "what lies between main line and lure",
    Part.KNOTS: "the knots and joints",
    Part.DRAG: "the drag",
    Part.WATER: "the water and how the rig is fished in it",
}

_OF_PART: Mapping[Part, Question] = {
    Part.LURE: Question.HOOK,
    Part.ROD: Question.CAST,
    Part.REEL: Question.SPOOL,
    Part.MAIN: Question.BREAKS,
    Part.BACKING: Question.SPOOL,
    Part.LEADER: Question.BREAKS,
    Part.KNOTS: Question.BREAKS,
    Part.DRAG: Question.BREAKS,
    Part.WATER: Question.SIGHT,
}

_OF_RULE: Mapping[str, Question] = {
    "lure-heavier-than-rod": Question.CAST,
    "lure-lighter-than-rod": Question.CAST,
    "lure-too-light-for-casting-reel": Question.CAST,
    "sinking-line-on-surface-lure": Question.DEPTH,
    "leader-sinks-surface-lure": Question.DEPTH,
    "line-wrong-for-technique": Question.DEPTH,
    "presentation-does-not-fit": Question.DEPTH,
    "bare-braid-in-clear-water": Question.SIGHT,
    "leader-missing": Question.SIGHT,
    "leader-length-unusual": Question.SIGHT,
    "leader-material-unusual": Question.DEPTH,
    "rod-too-soft-for-hook": Question.HOOK,
    "nothing-gives-on-small-trebles": Question.HOOK,
    "line-stretches-too-far-out": Question.HOOK,
    "line-stretches-in-deep-water": Question.FEEL,
    "drag-too-loose": Question.HOOK,
    "too-little-line": Question.SPOOL,
    "spool-half-empty": Question.SPOOL,
    "line-does-not-fit-spool": Question.SPOOL,
    "line-too-stiff-for-spinning-reel": Question.SPOOL,
}

STEPS = 3


def question_for(finding: Finding) -> Question:
    """Return the question under which the figures behind a reason are shown."""
    return _OF_RULE.get(finding.rule.name, _OF_PART[finding.part])


def hints(report: Report, speaker: Speaker, *, own: str = "") -> tuple[str, ...]:
    """Return the hints for a rig in the order in which they are given; the coach's own comes first."""
    worst = report.findings[0] if report.findings else None
    steps = _for_right() if worst is None else _for(worst, speaker)
    return (own, *steps) if own else steps


def _for(finding: Finding, speaker: Speaker) -> tuple[str, ...]:
    numbers = finding.hit.numbers()
    if numbers:
        figures = "; ".join(number_words(number, speaker) for number in numbers)
        second = f"Hold these figures beside each other. {figures}."
    else:
        second = f"No figure is needed here. Ask whether it is so on this rig: {finding.rule.what}"
    return (
        f"Look at {_PART_WORDS[finding.part]}.",
        second,
        f"Turn to the question “{question_for(finding)}” and see what it says of this rig.",
    )


def _for_right() -> tuple[str, ...]:
    return (
        "Go from the lure to the reel, part by part, and ask of each what it was made for.",
        "Hold three figures beside each other: what the weakest link carries, what the drag is set to, "
        "and what the rod and the line are labelled for.",
        f"Turn to the question “{Question.BREAKS}”. A rig may also be right as it is.",
    )
