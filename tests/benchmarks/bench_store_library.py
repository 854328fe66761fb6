"""10,000 cards: time to the first rows, to all of them, per keystroke, and memory per card.

Run: python -m tests.benchmarks.bench_store_library [CARDS]
"""

import gc
import json
import os
import statistics
import sys
import tempfile
import time
import tracemalloc
from pathlib import Path

from rigbuilder.store.library import Library, VerdictCache
from rigbuilder.store.rows import Sorting, sort_rows

QUERIES = ["frog", "line:braid 30", "larkm", "technique:jig -tag:loan", "rod 17", "zzz", "verdict:fault", "é"]
TECHNIQUES = ["hollow-body frog", "flipping jig", "drop shot", "spinnerbait"]
LINES = ["fluorocarbon", "braid", "nylon", "copolymer"]


def card(number: int) -> dict[str, object]:
    """Return a card of ordinary size, about 1.6 kB, each one different."""
    return {
        "format": "rigbuilder.card",
        "version": 1,
        "id": f"{number:08x}-0000-4000-8000-{number:012x}",
        "name": f"Pad frog, rod {number}",
        "notes": f"Held well along the north bank of Larkmere on day {number}; retie after every third fish.",
        "tags": ["larkmere", f"junior {number % 40}", "loan" if number % 3 else "own"],
        "presentation": "floating",
        "lure": {"technique": TECHNIQUES[number % 4], "weight": "5/8 oz", "trailer": None, "hook": "4/0"},
        "rod": {"label": "7'3\" H F 30-65 lb 1/2-1 1/4 oz"},
        "reel": {"kind": "baitcasting", "label": "14/120 lb/yd 7.1:1 15 lb"},
        "main": {
            "type": LINES[number % 4],
            "test": f"{10 + number % 41} lb",
            "diameter": "0.35 mm",
            "length": "80 yd",
            "condition": "fresh",
            "price": {"amount": 24.0, "currency": "EUR", "length": "200 yd"},
        },
        "backing": {"type": "nylon", "test": "14 lb", "knot": "double uni"},
        "knots": {"lure": "palomar", "arbor": "arbor"},
        "drag": "6 lb",
        "water": {"kind": "fresh", "temperature": "20 C", "clarity": "1.5 m", "cover": "matted grass"},
        "from": "shore",
        "fish": {"weight": "2 kg", "teeth": "unknown"},
        "log": [{"on": "2026-05-02", "what": "filled"}, {"on": "2026-05-09", "what": "cut back"}],
    }


def fill(folder: Path, count: int) -> None:
    """Write ``count`` cards, plainly: this is not what is measured."""
    for number in range(count):
        text = json.dumps(card(number), indent=2, ensure_ascii=False)
        (folder / f"pad-frog-{number}.rigcard").write_text(text, encoding="utf-8")


def milliseconds(since: float) -> float:
    return (time.perf_counter() - since) * 1000


def measure(folder: Path) -> dict[str, float]:
    """Return the measured figures of one folder of cards."""
    figures: dict[str, float] = {}
    library = Library(folder)
    start = time.perf_counter()
    batches = library.scan()
    next(batches)
    figures["first rows, ms"] = milliseconds(start)
    for _ in batches:
        pass
    figures["all rows, ms"] = milliseconds(start)
    start = time.perf_counter()
    library.refresh()
    figures["looking again, nothing changed, ms"] = milliseconds(start)
    verdicts = VerdictCache(folder / "none", "")
    words = ("fault", "risk", "note", "right")
    verdicts.known = {row.sha256: words[number % 4] for number, row in enumerate(library.rows.values())}
    times = []
    for query in QUERIES:
        for length in range(1, len(query) + 1):
            start = time.perf_counter()
            library.search(query[:length], verdicts)
            times.append(milliseconds(start))
    figures["a keystroke, median ms"] = statistics.median(times)
    figures["a keystroke, worst ms"] = max(times)
    start = time.perf_counter()
    sort_rows(list(library.rows.values()), Sorting.LINE, verdicts.known)
    figures["sorting all by line, ms"] = milliseconds(start)
    return figures


def memory_per_card(folder: Path, count: int) -> float:
    """Return bytes held per card, by Python's own count."""
    gc.collect()
    tracemalloc.start()
    library = Library(folder)
    library.refresh()
    gc.collect()
    held = tracemalloc.get_traced_memory()[0]
    tracemalloc.stop()
    return held / max(1, len(library.rows), count)


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    with tempfile.TemporaryDirectory() as name:
        fill(Path(name), count)
        figures = measure(Path(name))
        figures["memory per card, bytes"] = memory_per_card(Path(name), count)
    limits = {"first rows, ms": 150, "a keystroke, worst ms": 30, "memory per card, bytes": 5000}
    print(f"{count:,} cards, {os.cpu_count()} processors")
    for what, value in figures.items():
        limit = limits.get(what)
        verdict = "" if limit is None else f"limit {limit:>5}  {'ok' if value < limit else 'MISSED'}"
        print(f"{what:<36}{value:>10,.1f}  {verdict}")


if __name__ == "__main__":
    main()
