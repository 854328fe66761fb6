"""Remedies that are proven: each is tried on the rig and kept only if it helps and harms nothing."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from rigbuilder.model.document import Document, put_all
from rigbuilder.model.reading import read
from rigbuilder.review.core import Finding, Remedy, Safety, Severity
from rigbuilder.review.engine import Report, lay_out, report

_SHOWN = 3


@dataclass(frozen=True, slots=True)
class _Trial:
    remedy: Remedy
    outcome: Report


def proven(document: Document, before: Report, finding: Finding) -> tuple[Remedy, ...]:
    """Return the remedies of one reason, those that change least first, advice last.

    A proposal is kept when the changed card reads, the reason is gone, and no
    reason as severe or worse has come up that was not there before.
    """
    proposals = [remedy for mend in finding.rule.mends for remedy in mend(before.case)]
    advice = tuple(remedy for remedy in proposals if remedy.safety is Safety.ADVICE)
    changes = [remedy for remedy in proposals if remedy.safety is not Safety.ADVICE]
    good = [trial.remedy for trial in _tried(document, before, changes) if _helps(before, trial, finding)]
    distinct: dict[str, Remedy] = {}  # by its words: of two that read the same, the smaller change
    for remedy in sorted(good, key=lambda remedy: sum(value is not None for value in remedy.set.values())):
        if all(remedy.set != other.set for other in distinct.values()):
            distinct.setdefault(remedy.say, remedy)
    return (*list(distinct.values())[:_SHOWN], *advice)


def _tried(document: Document, before: Report, remedies: Sequence[Remedy]) -> Iterable[_Trial]:
    reference, house = before.case.reference, before.case.house
    readings = [(remedy, read(put_all(document, remedy.set), reference).rig) for remedy in remedies]
    changed = [(remedy, rig) for remedy, rig in readings if rig is not None and rig != before.case.rig]
    cases = lay_out([rig for _, rig in changed], reference, house) if changed else []
    return [_Trial(remedy, report(case)) for (remedy, _), case in zip(changed, cases, strict=True)]


def _helps(before: Report, trial: _Trial, finding: Finding) -> bool:
    had = {found.rule.name: found.severity for found in before.findings}
    for found in trial.outcome.findings:
        if found.rule.name == finding.rule.name:
            return False
        worse = found.severity > had.get(found.rule.name, Severity.RIGHT)
        if worse and found.severity >= finding.severity:
            return False
    return True


@dataclass(frozen=True, slots=True)
class MakeRight:
    """The smallest set of remedies found that clears faults and risks, and what it leaves."""

    remedies: tuple[Remedy, ...]
    document: Document
    after: Report


def make_right(document: Document, before: Report, *, most: int = 6) -> MakeRight:
    """Apply remedies, worst reason first, until no fault or risk is left that a change can clear.

    At each step the remedy that leaves the mildest review is taken; of equals
    the one that changes least. The document given is not touched.
    """
    taken: list[Remedy] = []
    now, rest = before, document
    while len(taken) < most and now.verdict >= Severity.RISK:
        best = _best_step(rest, now)
        if best is None:
            break
        taken.append(best.remedy)
        rest = put_all(rest, best.remedy.set)
        now = best.outcome
    return MakeRight(tuple(taken), rest, now)


def _burden(outcome: Report) -> tuple[int, ...]:
    severities = [finding.severity for finding in outcome.findings]
    return tuple(severities.count(step) for step in (Severity.FAULT, Severity.RISK, Severity.NOTE))


def _best_step(document: Document, now: Report) -> _Trial | None:
    grave = [finding for finding in now.findings if finding.severity >= Severity.RISK]
    remedies = [
        remedy
        for finding in grave
        for remedy in proven(document, now, finding)
        if remedy.safety is not Safety.ADVICE
    ]
    trials = [t for t in _tried(document, now, remedies) if _burden(t.outcome)[:2] < _burden(now)[:2]]
    if not trials:
        return None
    return min(trials, key=lambda trial: (_burden(trial.outcome), len(trial.remedy.set)))
