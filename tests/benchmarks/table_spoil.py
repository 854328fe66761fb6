"""Print the table of spoilt rigs: on which techniques one change of the card makes just one rule speak.

Run as ``python -m tests.benchmarks.table_spoil``; it takes some minutes.
"""

import sys
import time
from collections import Counter

from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.rules.book import RULES
from rigbuilder.review.spoil import spoil


def main() -> None:
    """Print, for each rule, on how many techniques it can be caused, and with which severities."""
    reference, house, start = load(), House.shipped(), time.perf_counter()
    total = 0
    for rule in RULES:
        found: Counter[str] = Counter()
        missing = []
        for technique in reference.techniques:
            spoilt = spoil(technique, rule.name, 0, reference, house)
            if spoilt is None:
                missing.append(technique)
                continue
            word = next(f.severity.word for f in spoilt.report.findings if f.rule is rule)
            found[word] += 1
        total += sum(found.values())
        words = ", ".join(f"{count} {word}" for word, count in sorted(found.items())) or "none"
        shown = f"not on {', '.join(missing)}" if 0 < len(missing) <= 12 else f"not on {len(missing)}"
        print(f"{rule.name:36} {sum(found.values()):3} techniques ({words}); {shown}", flush=True)
    took = time.perf_counter() - start
    print(f"{total} spoilt rigs: {len(RULES)} rules, {len(reference.techniques)} techniques, {took:.0f} s")


if __name__ == "__main__":
    sys.exit(main())
