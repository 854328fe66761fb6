"""What the lesson's window shows, as plain values in words: parts, mechanisms, hints, the outcome."""

from dataclasses import dataclass

from rigbuilder.lessons.answer import Mended, Result
from rigbuilder.lessons.choices import Choice, choices
from rigbuilder.lessons.hints import hints, question_for
from rigbuilder.lessons.progress import Progress, Standing, right_rigs, standings
from rigbuilder.model.fields import BY_PATH, Part
from rigbuilder.review.engine import Report
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.speak import Speaker
from rigbuilder.viewmodels.lesson import LessonRun
from rigbuilder.viewmodels.pins import part_words
from rigbuilder.viewmodels.reasons import Reason, capital, reasons
from rigbuilder.viewmodels.slate import field_words

FOUND, SEEN, MISSED = "found", "seen", "missed"
_MOST_CHANGES = 4


@dataclass(frozen=True, slots=True)
class MarkShown:
    """A marked part with the mechanisms on offer; ``picked`` are the rules chosen so far."""

    part: Part
    words: str
    picked: tuple[str, ...]
    choices: tuple[Choice, ...]


@dataclass(frozen=True, slots=True)
class ReasonShown:
    """A reason beside what was said: ``state`` is found, seen or missed, ``words`` says it."""

    state: str
    words: str
    reason: Reason


@dataclass(frozen=True, slots=True)
class OutcomeShown:
    """The outcome in words: one opening sentence, the reasons, what was marked without cause, the mending."""

    opening: str
    reasons: tuple[ReasonShown, ...]
    without_cause: tuple[str, ...]
    mended: str
    remark: str


@dataclass(frozen=True, slots=True)
class RuleStanding:
    """How a rule stands with the junior, in words."""

    rule: str
    headline: str
    understood: bool
    words: str


PARTS: tuple[tuple[Part, str], ...] = tuple((part, capital(part_words(part))) for part in Part)
"""Every part that can be marked, with its words."""


def title_shown(run: LessonRun) -> str:
    """Return where the lesson stands, e.g. ``Rig 2 of 6``."""
    total, sitting = len(run.lesson.rigs), run.sitting
    if sitting.again is not None:
        return f"Once more, in another rig (then on to rig {min(sitting.at + 1, total)} of {total})"
    if run.rig is None:
        return "The lesson is done"
    return f"Rig {sitting.at + 1} of {total}"


def marks_shown(run: LessonRun) -> tuple[MarkShown, ...]:
    """Return the marked parts with what may be chosen for each."""
    given, rig = run.given, run.rig
    if given is None or rig is None:
        return ()
    said = run.sitting.said
    return tuple(
        MarkShown(
            part,
            part_words(part),
            said.reasons(part),
            choices(given, part, seed=run.lesson.seed, meant=rig.meant),
        )
        for part in said.parts
    )


def hints_shown(run: LessonRun) -> tuple[str, ...]:
    """Return the hints taken so far."""
    if run.given is None or run.rig is None:
        return ()
    return hints(run.given, run.bench.speaker, own=run.rig.hint)[: run.sitting.hints]


def has_more_hints(run: LessonRun) -> bool:
    """Tell whether another hint can be had."""
    if run.given is None or run.rig is None or run.sitting.shown:
        return False
    return run.sitting.hints < len(hints(run.given, run.bench.speaker, own=run.rig.hint))


def question_of(run: LessonRun) -> str:
    """Return the question under which the worst reason's figures are, once the reasons are shown."""
    if not run.sitting.shown or run.given is None or not run.given.findings:
        return ""
    return str(question_for(run.given.findings[0]))


def outcome_shown(run: LessonRun) -> OutcomeShown | None:
    """Return the outcome of the rig that is up, ``None`` before the reasons are shown."""
    result, given, rig = run.result(), run.given, run.rig
    if result is None or given is None or rig is None:
        return None
    state = {finding.rule.name: FOUND for finding in result.found}
    state |= {finding.rule.name: SEEN for finding in result.seen}
    words = {
        FOUND: "You found this",
        SEEN: "You marked the right part; the mechanism is another",
        MISSED: "This is there as well" if result.found or result.seen else "This is what there is to find",
    }
    shown = []
    for reason in reasons(given, run.bench.speaker):
        kind = state.get(reason.rule, MISSED)
        shown.append(ReasonShown(kind, words[kind], reason))
    return OutcomeShown(
        opening=_opening(result),
        reasons=tuple(shown),
        without_cause=_without_cause(result, given),
        mended="" if result.mended is None else _mended(result.mended, run.bench.speaker),
        remark=rig.remark,
    )


def standings_shown(run: LessonRun) -> tuple[RuleStanding, ...]:
    """Return what the junior has understood, and what not yet, rule by rule: for junior and coach."""
    return tuple(standing_shown(row) for row in standings(run.progress.answers))


def right_words(progress: Progress) -> str:
    """Return how a junior does with right rigs, in words; empty while none came up."""
    found = right_rigs(progress.answers)
    words = f"Right rigs called right: {found.seen_as_right} of {found.total}." if found.total else ""
    parts = ", ".join(part_words(part) for part in found.without_cause)
    return f"{words} Marked without cause at times: {parts}.".strip() if parts else words


def standing_shown(row: Standing) -> RuleStanding:
    """Return how a rule stands, in words."""
    what = next((rule.what for rule in RULES if rule.name == row.rule), row.rule)
    total = row.understood + row.not_yet
    seen = f"understood in {row.understood} of {total} rig{'s' if total != 1 else ''}"
    return RuleStanding(row.rule, what, row.is_understood, seen)


def _without_cause(result: Result, given: Report) -> tuple[str, ...]:
    """Return what was marked and does not hold; of a part that is wrong for other reasons, which words."""
    why = {rule.name: rule.why for rule in RULES}
    wrong = {finding.part for finding in given.findings}
    told = []
    for mark in result.without_cause:
        part = part_words(mark.part)
        if mark.part in wrong and mark.rule in why:
            told.append(f"Of the {part} you also said: “{why[mark.rule]}” That does not hold on this rig.")
        else:
            told.append(f"You marked the {part}. The review finds nothing against it on this rig.")
    return tuple(dict.fromkeys(told))


def _opening(result: Result) -> str:
    if result.right:
        return "Nothing is wrong with this rig, and you saw it."
    if not (result.found or result.seen or result.missed):
        return "This rig is right as it is."
    if result.is_full:
        return "You found all there is, and why."
    if result.said_nothing_wrong:
        return "Here is what the review finds on this rig."
    if result.found:
        return "You found part of it. Here is the rest."
    return "Here is what the review finds, beside what you said."


def _mended(mended: Mended, speaker: Speaker) -> str:
    paths = [path for path in mended.changed if path in BY_PATH]
    names = ", ".join(field_words(path) for path in paths[:_MOST_CHANGES])
    start = f"You changed: {names}. " if names else ""
    if mended.unreadable:
        return f"{start}{mended.unreadable}"
    if mended.is_right:
        return f"{start}With your change the rig is right."
    open_ = (*mended.new, *mended.left)
    left = "; ".join(finding.headline(speaker) for finding in open_)
    gone = "Something is better. " if mended.gone else ""
    return f"{start}{gone}With your change this is still to say: {left}."
