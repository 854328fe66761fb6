"""The review: every rule of the book over one rig or many, one cause giving one reason."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Rig
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review.case import Case
from rigbuilder.review.conditions import aims_for
from rigbuilder.review.core import Finding, Rule, Severity
from rigbuilder.review.figures import figures
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.speak import Speaker

_ORDER = {part: index for index, part in enumerate(Part)}


@dataclass(frozen=True, slots=True)
class Report:
    """What the review says of one rig, worst reason first."""

    case: Case
    findings: tuple[Finding, ...]
    silenced: tuple[Finding, ...] = ()

    @property
    def verdict(self) -> Severity:
        """Return the worst severity, ``RIGHT`` when there is no reason."""
        return max((finding.severity for finding in self.findings), default=Severity.RIGHT)

    def right(self, speaker: Speaker) -> tuple[tuple[Rule, str], ...]:
        """Return what is right: the rules that had something to look at and found it in order."""
        spoken = {finding.rule.name for finding in self.findings + self.silenced}
        settled = ((rule, rule.settled(self.case, speaker)) for rule in RULES
                   if rule.settled is not None and rule.name not in spoken)  # fmt: skip
        return tuple((rule, words) for rule, words in settled if words)


def lay_out(rigs: Sequence[Rig], reference: Reference, house: House) -> list[Case]:
    """Return the cases of many rigs; their figures come from one vectorised pass."""
    techniques = [reference.techniques[rig.technique] for rig in rigs]
    aims = aims_for(rigs, techniques, reference)
    rows = figures(rigs, techniques, reference)
    return [
        Case(rig, technique, reference, house, aim, facts)
        for rig, technique, aim, facts in zip(rigs, techniques, aims, rows, strict=True)
    ]


def review(rig: Rig, reference: Reference, house: House) -> Report:
    """Review one rig."""
    return report(lay_out([rig], reference, house)[0])


def report(case: Case) -> Report:
    """Run the rule book over one case."""
    found = _sorted(_without_replaced(_hits(case)))
    hushed = {entry.rule for entry in case.rig.silenced}
    return Report(
        case,
        tuple(finding for finding in found if finding.rule.name not in hushed),
        tuple(finding for finding in found if finding.rule.name in hushed),
    )


def _hits(case: Case) -> Iterable[Finding]:
    for rule in RULES:
        hit = rule.check(case)
        if hit is None:
            continue
        ruled = case.house.severity(rule.name)
        severity = hit.severity if ruled is None else Severity[ruled.upper()]
        if severity is not Severity.RIGHT:
            yield Finding(rule, hit, severity, house=ruled is not None)


def _without_replaced(found: Iterable[Finding]) -> list[Finding]:
    """Drop what another reason already explains, unless it is the harsher of the two."""
    kept = list(found)
    dropped: set[str] = set()
    for finding in kept:
        for other in kept:
            if other.rule.name in finding.rule.replaces and other.severity <= finding.severity:
                dropped.add(other.rule.name)
    return [finding for finding in kept if finding.rule.name not in dropped]


def _sorted(found: list[Finding]) -> list[Finding]:
    return sorted(found, key=lambda finding: (-finding.severity, _ORDER[finding.part]))
