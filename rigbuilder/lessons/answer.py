"""What a junior says about a rig, and that beside what the review says: found, missed, without cause."""

from collections.abc import Collection
from dataclasses import dataclass

from rigbuilder.lessons.choices import NEIGHBOURS
from rigbuilder.model.document import Document, differences
from rigbuilder.model.fields import Part
from rigbuilder.review.core import Finding, Severity
from rigbuilder.review.engine import Report


@dataclass(frozen=True, slots=True)
class Mark:
    """One part marked as wrong, with the rule whose mechanism was picked; empty while none is.

    A part that is wrong for two reasons has a mark for each.
    """

    part: Part
    rule: str = ""


@dataclass(frozen=True, slots=True)
class Said:
    """Everything that was said of one rig. ``mended`` is the changed card, ``hints`` how many were taken."""

    marks: tuple[Mark, ...] = ()
    nothing_wrong: bool = False
    mended: Document | None = None
    hints: int = 0

    @property
    def is_something(self) -> bool:
        """Tell whether there is an answer to hold against the review."""
        return self.nothing_wrong or any(mark.rule for mark in self.marks)

    @property
    def parts(self) -> tuple[Part, ...]:
        """Return the marked parts, each once, in the order in which they were marked."""
        return tuple(dict.fromkeys(mark.part for mark in self.marks))

    def reasons(self, part: Part) -> tuple[str, ...]:
        """Return the rules whose mechanisms were picked for a part."""
        return tuple(mark.rule for mark in self.marks if mark.part is part and mark.rule)

    def marked(self, part: Part) -> "Said":
        """Return the answer with a part marked; what was said of others stays."""
        if part in self.parts:
            return self
        return Said((*self.marks, Mark(part)), False, self.mended, self.hints)

    def unmarked(self, part: Part) -> "Said":
        """Return the answer without the mark on a part."""
        marks = tuple(mark for mark in self.marks if mark.part is not part)
        return Said(marks, self.nothing_wrong, self.mended, self.hints)

    def because(self, part: Part, rule: str) -> "Said":
        """Return the answer with one more mechanism picked for a marked part."""
        rules = self.reasons(part)
        return self if part not in self.parts or rule in rules else self._with(part, (*rules, rule))

    def not_because(self, part: Part, rule: str) -> "Said":
        """Return the answer without a mechanism that was picked; the part stays marked."""
        rules = self.reasons(part)
        return self if rule not in rules else self._with(part, tuple(name for name in rules if name != rule))

    def _with(self, part: Part, rules: tuple[str, ...]) -> "Said":
        """Return the answer with these mechanisms for a marked part, in its old place."""
        reasons = {marked: self.reasons(marked) for marked in self.parts} | {part: rules}
        marks = tuple(Mark(each, rule) for each, named in reasons.items() for rule in named or ("",))
        return Said(marks, False, self.mended, self.hints)

    def nothing(self) -> "Said":
        """Return the answer that nothing is wrong with the rig; the marks are taken back."""
        return Said((), True, self.mended, self.hints)


@dataclass(frozen=True, slots=True)
class Mended:
    """What the junior's own change has done: reasons that went, that stayed, and that came."""

    changed: tuple[str, ...]
    gone: tuple[Finding, ...]
    left: tuple[Finding, ...]
    new: tuple[Finding, ...]
    unreadable: str = ""

    @property
    def is_right(self) -> bool:
        """Tell whether the change made the rig right: no fault or risk is left."""
        open_ = (*self.left, *self.new)
        return not self.unreadable and all(found.severity < Severity.RISK for found in open_)


@dataclass(frozen=True, slots=True)
class Result:
    """What was said beside what is.

    ``found``: place and mechanism agree. ``seen``: the right place, another mechanism. ``missed``:
    not marked. ``without_cause``: a part marked on which the review finds nothing, or a mechanism
    picked beside all that there is to find on it. ``right`` tells that the rig is right and was
    called so.
    """

    found: tuple[Finding, ...]
    seen: tuple[Finding, ...]
    missed: tuple[Finding, ...]
    without_cause: tuple[Mark, ...]
    said_nothing_wrong: bool
    mended: Mended | None = None

    @property
    def right(self) -> bool:
        """Tell whether the rig is right and that was said."""
        return self.said_nothing_wrong and not (self.seen or self.missed)

    @property
    def is_full(self) -> bool:
        """Tell whether everything was found and nothing marked beyond it."""
        return not (self.seen or self.missed or self.without_cause) and (bool(self.found) or self.right)

    @property
    def understood(self) -> tuple[str, ...]:
        """Return the rules whose place and mechanism were found."""
        return tuple(found.rule.name for found in self.found)

    @property
    def not_yet(self) -> tuple[str, ...]:
        """Return the rules that were missed, or seen for another reason."""
        return tuple(found.rule.name for found in (*self.seen, *self.missed))


@dataclass(frozen=True, slots=True)
class Change:
    """The card as it was given, as it was mended, and the mended one's review where it can be read."""

    old: Document
    new: Document
    report: Report | None


def judge(said: Said, report: Report, meant: Collection[str], change: Change | None = None) -> Result:
    """Hold an answer against the review of the rig as it was given.

    A note that the lesson does not mean is welcome when it is found, and not counted when it is not.
    """
    picked = {mark.rule for mark in said.marks if mark.rule}
    marked = {mark.part for mark in said.marks}
    found, seen, missed = [], [], []
    for finding in report.findings:
        if finding.rule.name in picked:
            found.append(finding)
        elif finding.rule.name not in meant and finding.severity < Severity.RISK:
            continue
        elif finding.part in marked:
            seen.append(finding)
        else:
            missed.append(finding)
    return Result(
        found=tuple(found),
        seen=tuple(seen),
        missed=tuple(missed),
        without_cause=tuple(mark for mark in said.marks if not _has_cause(mark, report, seen)),
        said_nothing_wrong=said.nothing_wrong,
        mended=None if change is None else _mended(report, change),
    )


def _has_cause(mark: Mark, report: Report, seen: Collection[Finding]) -> bool:
    """Tell whether a mark stands for a reason.

    With its mechanism it does, on the reason's part or on one that touches it. With no mechanism, or
    another one, it does where a reason of its part was not named: ticking everything beside what is
    true has no cause.
    """
    near = (mark.part, *NEIGHBOURS[mark.part])
    if any(finding.rule.name == mark.rule and finding.part in near for finding in report.findings):
        return True
    open_ = report.findings if not mark.rule else seen
    return any(finding.part is mark.part for finding in open_)


def _mended(before: Report, change: Change) -> Mended:
    changed = tuple(path for path, _, _ in differences(change.old, change.new))
    if change.report is None:
        return Mended(changed, (), before.findings, (), "The changed card cannot be read yet.")
    had = {finding.rule.name for finding in before.findings}
    has = {finding.rule.name for finding in change.report.findings}
    return Mended(
        changed=changed,
        gone=tuple(finding for finding in before.findings if finding.rule.name not in has),
        left=tuple(finding for finding in change.report.findings if finding.rule.name in had),
        new=tuple(finding for finding in change.report.findings if finding.rule.name not in had),
    )
