"""The review: every rule of the book over one rig or many, one cause giving one reason."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Rig
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review.case import Case
from rigbuilder.review.conditions import aims_for
from rigbuilder.review.core import Finding, Hit, Rule, Severity
from rigbuilder.review.figures import figures
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.speak import Speaker

_ORDER = {part: index for index, part in enumerate(Part)}
LAST = tuple(rule for rule in RULES if rule.after is not None)


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
    shipped = house.is_shipped
    return [
        Case(rig, technique, reference, house, aim, facts, shipped)
        for rig, technique, aim, facts in zip(rigs, techniques, aims, rows, strict=True)
    ]


def review(rig: Rig, reference: Reference, house: House) -> Report:
    """Review one rig."""
    return report(lay_out([rig], reference, house)[0])


def report(case: Case) -> Report:
    """Run the rule book over one case."""
    kept = _without_replaced(_hits(case))
    found = _sorted([*kept, *_last(case, kept)])
    hushed = {entry.rule for entry in case.rig.silenced}
    return Report(
        case,
        tuple(finding for finding in found if finding.rule.name not in hushed),
        tuple(finding for finding in found if finding.rule.name in hushed),
    )


def _hits(case: Case) -> Iterable[Finding]:
    for rule in RULES:
        hit = rule.check(case)
        if hit is not None and (finding := _found(case, rule, hit)) is not None:
            yield finding


def _last(case: Case, kept: list[Finding]) -> Iterable[Finding]:
    """Ask the rules about what the others said."""
    spoken = frozenset(finding.rule.name for finding in kept)
    for rule in LAST:
        hit = rule.after(case, spoken) if rule.after is not None else None
        if hit is not None and (finding := _found(case, rule, hit)) is not None:
            yield finding


def _found(case: Case, rule: Rule, hit: Hit) -> Finding | None:
    """Return what a hit is under the house's rules; ``None`` where the house has switched the rule off."""
    assumed = () if hit.severity <= Severity.NOTE else _assumed(case, rule, hit)
    if case.shipped:
        return Finding(rule, hit, _capped(hit.severity, assumed), case, assumed=assumed)
    ruled = case.house.severity(rule.name)
    severity = hit.severity if ruled is None else Severity[ruled.upper()]
    said = () if ruled is None else (f"the coach's house rules call this a {ruled}",)
    if severity is Severity.RIGHT:
        return None
    house = said + _ranges_of_house(case, rule)
    return Finding(rule, hit, _capped(severity, assumed), case, house, assumed)


def _assumed(case: Case, rule: Rule, hit: Hit) -> tuple[str, ...]:
    """Return which of the card paths that a grave reason rests on were not said."""
    return tuple(path for path in rule.rests_on + hit.rests_on if not case.rig.says(path))


def _capped(severity: Severity, assumed: tuple[str, ...]) -> Severity:
    """Return the severity of a reason; what was only assumed bears no more than a note."""
    return min(severity, Severity.NOTE) if assumed else severity


def _ranges_of_house(case: Case, rule: Rule) -> tuple[str, ...]:
    if not rule.reads:
        return ()
    read = f"lines.{case.main.type}" if rule.reads == "lines" else rule.reads
    if read not in case.house.overrides(case.reference, case.technique):
        return ()
    return ("the range is the coach's own, in place of the shipped one",)


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
