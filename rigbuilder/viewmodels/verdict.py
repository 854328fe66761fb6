"""The review in a few words: worst severity and counts, for the head of the window."""

from collections import Counter
from dataclasses import dataclass

from rigbuilder.review.core import Severity
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.fieldstate import place_of

_PLURAL = {"fault": "faults", "risk": "risks", "note": "notes"}


@dataclass(frozen=True, slots=True)
class Verdict:
    """``kind`` is a severity; ``field`` the first field to mend while the card cannot be reviewed."""

    kind: str
    text: str
    field: str = ""


def verdict(bench: Bench) -> Verdict:
    """Return what the head of the window says of the rig."""
    if bench.report is None:
        problems = bench.reading.problems
        count = len(problems)
        fields = "1 field" if count == 1 else f"{count} fields"
        return Verdict("fault", f"{fields} to fill in or mend", place_of(problems[0]) if problems else "")
    counts = Counter(finding.severity for finding in bench.report.findings)
    said = [_count(severity, counts[severity]) for severity in (Severity.FAULT, Severity.RISK, Severity.NOTE)]
    text = " · ".join(words for words in said if words)
    return Verdict(bench.report.verdict.word, text or "all right")


def _count(severity: Severity, count: int) -> str:
    if not count:
        return ""
    return f"1 {severity.word}" if count == 1 else f"{count} {_PLURAL[severity.word]}"
