"""The reasons of a review as plain values, ready to be shown."""

from dataclasses import dataclass

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import Range
from rigbuilder.review.core import Finding, Number
from rigbuilder.review.engine import Report
from rigbuilder.review.explain import distinct, source_words
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import in_system
from rigbuilder.viewmodels.glossary import told, words_in
from rigbuilder.viewmodels.pins import first_field, numbering, part_words


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure: its words, and low / typical / high on the scale of its unit."""

    name: str
    text: str
    low: float
    typical: float
    high: float
    unit: str


@dataclass(frozen=True, slots=True)
class Reason:
    """One reason in the words of the chosen unit system; ``finding`` is what it was made from.

    ``words`` explains the words of the trade in it;
    ``differ`` names the positions where anglers differ, one a line, and which stands here.
    """

    rule: str
    number: int
    severity: str
    part: Part
    where: str
    field: str
    headline: str
    why: str
    figures: tuple[Figure, ...]
    basis: tuple[str, ...]
    differ: tuple[str, ...]
    words: tuple[str, ...]
    finding: Finding

    @property
    def spoken(self) -> str:
        """Return the reason in one sentence, for assistive technology."""
        return f"Reason {self.number}, {self.severity}, {self.where}: {self.headline}"


@dataclass(frozen=True, slots=True)
class Silenced:
    """A reason that is not heard on this card; ``headline`` is empty where there is nothing to hear."""

    rule: str
    severity: str
    headline: str
    why: str


def reasons(report: Report, speaker: Speaker) -> tuple[Reason, ...]:
    """Return the reasons of a review, worst first."""
    numbers = numbering(report)
    return tuple(_reason(finding, numbers[finding.rule.name], speaker) for finding in report.findings)


def silenced(report: Report, speaker: Speaker) -> tuple[Silenced, ...]:
    """Return what the card silences, with the why that was written; the idle entries last."""
    heard = {finding.rule.name: finding for finding in report.silenced}
    entries = [
        Silenced(
            entry.rule,
            heard[entry.rule].severity.word if entry.rule in heard else "",
            capital(heard[entry.rule].headline(speaker)) if entry.rule in heard else "",
            entry.why,
        )
        for entry in report.case.rig.silenced
    ]
    return tuple(sorted(entries, key=lambda entry: not entry.headline))


def right_points(report: Report, speaker: Speaker) -> tuple[str, ...]:
    """Return what is right, one sentence for each point."""
    return tuple(capital(words) for _, words in report.right(speaker))


def capital(text: str) -> str:
    """Return a sentence with a capital at its beginning."""
    return text[:1].upper() + text[1:]


def figure(number: Number, speaker: Speaker) -> Figure:
    """Return one figure in the units of the speaker."""
    span = Range(number.low, number.typical, number.high)
    if number.dimension is None:
        low, typical, high = (f"{value:.2g}" for value in span)
        text = typical if low == high else f"{typical} ({low}–{high})"
        return Figure(number.name, text, span.low, span.typical, span.high, "")
    shown = [in_system(value, number.dimension, speaker.system, kind=number.kind) for value in span]
    low_v, typical_v, high_v = (value for value, _ in shown)
    words = (
        speaker.span(number.low, number.high, number.dimension, number.kind)
        if number.ends
        else speaker.spread(span, number.dimension, number.kind)
    )
    return Figure(number.name, words, low_v, typical_v, high_v, shown[0][1])


def _sides(disagreement: str) -> tuple[str, ...]:
    """Return the positions one by one; empty where anglers do not differ."""
    text = disagreement.removeprefix("Anglers differ. ")
    for lead in ("Or: ", "Here: ", "The coach's house takes: "):
        text = text.replace(f" {lead}", f"\n{lead}")
    return tuple(text.splitlines())


def _reason(finding: Finding, number: int, speaker: Speaker) -> Reason:
    basis = tuple(capital(source_words(source)) for source in distinct(finding.sources))
    headline, why = capital(finding.headline(speaker)), finding.why(speaker)
    return Reason(
        rule=finding.rule.name,
        number=number,
        severity=finding.severity.word,
        part=finding.part,
        where=part_words(finding.part),
        field=first_field(finding.part),
        headline=headline,
        why=why,
        figures=tuple(figure(each, speaker) for each in finding.hit.numbers()),
        basis=(*basis, *(f"{capital(words)}." for words in finding.house)),
        differ=_sides(finding.disagreement),
        words=told(words_in([headline, why], finding.case.reference)),
        finding=finding,
    )
