"""Reasons and rules as plain text: what, why, figures, remedy, how we know."""

import textwrap
from collections.abc import Iterable, Sequence

from rigbuilder.review.core import Example, Finding, Number, Remedy, Rule, Severity
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import Kind, Source
from rigbuilder.units.systems import show_si

_WIDTH = 88
_PLAIN = {
    Kind.COMPUTED: "computed",
    Kind.PUBLISHED: "published",
    Kind.PRACTICE: "common practice, no single source",
    Kind.MEMORY: "from memory, not checked",
}


def number_words(number: Number, speaker: Speaker) -> str:
    """Return a figure as "name: typical (low to high) unit", a printed range by its ends."""
    if number.ends and number.dimension is not None:
        return f"{number.name}: {speaker.span(number.low, number.high, number.dimension, number.kind)}"
    if number.dimension is None:
        shown = [f"{value:.2g}" for value in (number.low, number.typical, number.high)]
    else:
        shown = [
            show_si(value, number.dimension, speaker.system, kind=number.kind)
            for value in (number.low, number.typical, number.high)
        ]
    if shown[0] == shown[2]:
        return f"{number.name}: {shown[1]}"
    return f"{number.name}: {shown[1]} ({shown[0]} to {shown[2]})"


def source_words(source: Source) -> str:
    """Return how something is known, in one sentence."""
    parts = [part for part in (source.text, source.where) if part]
    return f"{_PLAIN[source.kind]}: {', '.join(parts)}" if parts else _PLAIN[source.kind]


def distinct(sources: Iterable[Source]) -> tuple[Source, ...]:
    """Return the sources once each, computed first, then published, practice, memory."""
    order = list(Kind)
    return tuple(sorted(dict.fromkeys(sources), key=lambda source: order.index(source.kind)))


def finding_text(finding: Finding, remedies: Sequence[Remedy], speaker: Speaker) -> str:
    """Return one reason as a block of text for the terminal or the page."""
    lines = [f"{finding.severity.word.upper()} ({finding.part}): {finding.headline(speaker)}"]
    lines.append(_wrapped(finding.why(speaker)))
    lines += [f"  {number_words(number, speaker)}" for number in finding.hit.numbers()]
    lines += [f"  → {remedy.say}" for remedy in remedies]
    lines += [f"  how we know: {source_words(source)}" for source in distinct(finding.sources)]
    if finding.disagreement:
        lines.append(_wrapped(finding.disagreement))
    lines += [f"  {words}" for words in finding.house]
    return "\n".join(lines)


def rule_text(rule: Rule) -> str:
    """Return a rule as the rule book prints it."""
    lines = [rule.name, f"  {rule.part}, {rule.severity.word} at worst", ""]
    lines += [_wrapped(rule.what), "", _wrapped(f"Why: {rule.why}"), ""]
    lines += [f"  wrong: {example_words(example)}" for example in rule.wrong]
    lines += [f"  right: {example_words(example)}" for example in rule.right]
    lines += [f"  how we know: {source_words(source)}" for source in distinct(rule.sources)]
    if rule.replaces:
        lines.append(f"  makes superfluous: {', '.join(rule.replaces)}")
    return "\n".join(lines)


def example_words(example: Example) -> str:
    """Return an example as a short sentence: the usual rig and what is changed on it."""
    if example.says:
        return example.says
    if not example.changes:
        return f"the usual rig for {example.technique}"
    changed = ", ".join(
        f"{path} {'none' if value is None else value}" for path, value in example.changes.items()
    )
    return f"the usual rig for {example.technique} with {changed}"


def verdict_words(severities: Sequence[Severity]) -> str:
    """Return "2 faults, 1 note", or "right"."""
    counts = [(severities.count(step), step.word) for step in (Severity.FAULT, Severity.RISK, Severity.NOTE)]
    words = [f"{count} {word}{'' if count == 1 else 's'}" for count, word in counts if count]
    return ", ".join(words) or "right"


def _wrapped(text: str) -> str:
    return textwrap.fill(text, _WIDTH, initial_indent="  ", subsequent_indent="  ")
