"""What if, for the window: the fields of a question, their values, and the limits in words."""

from dataclasses import dataclass

from rigbuilder.lessons.whatif import FIELDS, Sweep, limits
from rigbuilder.review.core import Severity
from rigbuilder.review.engine import Report
from rigbuilder.review.questions.answer import Question
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.reasons import capital
from rigbuilder.viewmodels.slate import field_words

QUESTIONS: tuple[str, ...] = tuple(str(question) for question in FIELDS)


@dataclass(frozen=True, slots=True)
class StepShown:
    """One value: its text, whether the card says it, how bad it is, and the rig to look at."""

    value: str
    present: bool
    severity: str
    words: str
    report: Report


@dataclass(frozen=True, slots=True)
class LimitShown:
    """Where a reason comes or goes, after a step counted from 0; ``words`` say which way. Nearest first."""

    after: int
    severity: str
    words: str


@dataclass(frozen=True, slots=True)
class WhatIfShown:
    """One field as a slider, or as choices where it has no order."""

    field: str
    words: str
    ordered: bool
    steps: tuple[StepShown, ...]
    limits: tuple[LimitShown, ...]
    present: int


def fields_of(bench: Bench, question: str) -> tuple[tuple[str, str], ...]:
    """Return the fields that matter to a question on this card, with their words."""
    found = []
    for field in FIELDS[Question(question)]:
        if field.startswith("leader.") and not isinstance(bench.document.get("leader"), dict):
            continue
        found.append((field, capital(field_words(field))))
    return tuple(found)


def what_if(bench: Bench, field: str) -> WhatIfShown | None:
    """Return a field of the card on the bench over the values of the trade, ``None`` without a rig."""
    if bench.report is None:
        return None
    sweep = limits(bench.document, field, bench.reference, bench.house, system=bench.speaker.system)
    if not sweep.steps:
        return None
    return WhatIfShown(
        field=field,
        words=capital(field_words(field)),
        ordered=sweep.ordered,
        steps=tuple(
            StepShown(
                step.value,
                step.present,
                step.report.verdict.word,
                _step_words(step.report, bench),
                step.report,
            )
            for step in sweep.steps
        ),
        limits=_limits(sweep, bench),
        present=sweep.present,
    )


def _limits(sweep: Sweep, bench: Bench) -> tuple[LimitShown, ...]:
    found = []
    here = sweep.present if sweep.present >= 0 else 0
    for limit in sorted(sweep.limits, key=lambda each: abs(each.after + 0.5 - here)):
        if limit.finding.severity < Severity.NOTE:
            continue
        low, high = sweep.steps[limit.after].value, sweep.steps[limit.after + 1].value
        headline = limit.finding.headline(bench.speaker)
        what = f"from {high} on" if limit.appears else f"up to {low}"
        found.append(LimitShown(limit.after, limit.finding.severity.word, f"{capital(what)}: {headline}"))
    return tuple(found)


def _step_words(report: Report, bench: Bench) -> str:
    if not report.findings:
        return "Right: no reason speaks here."
    return "; ".join(
        f"{finding.severity.word}: {finding.headline(bench.speaker)}" for finding in report.findings
    )
