"""Throw a million damaged cards, sets and pasted texts at the readers; only CardError may come out.

Run: python -m tests.benchmarks.fuzz_codec [INPUTS] [SEED]

Guided by coverage in a plain way: an input that makes the reader run a line
of the store not run before joins the seeds that are damaged next.
"""

import json
import os
import random
import resource
import sys
import time
from collections.abc import Callable
from pathlib import Path
from types import FrameType
from typing import Any

from rigbuilder.store import cardfile, codec, listing, migrations, sets
from rigbuilder.store.errors import CardError

GOLDEN = Path(__file__).parents[1] / "unit" / "store" / "versions" / "v1.rigcard"
WATCHED = {module.__file__ for module in (codec, cardfile, migrations, sets, listing)}
PIECES = [
    *(b"{", b"}", b"[", b"]", b'"', b"\\", b",", b":", b"null", b"true", b"NaN", b"1e999", b"-0", b"9" * 40),
    *(
        b"\\ud800",
        b"\xef\xbb\xbf",
        b"\xff\xfe",
        b"\0",
        b"[" * 40,
        b'{"a":' * 40,
        b"\xed\xa0\x80",
        b"\n",
        b"> ",
    ),
    *(b'"version": 2', b'"format": "rigbuilder.set"', b'"cards": [', b"```", b"1.5", b"\xc2\xa0", b"//"),
]


def damage(data: bytes, chance: random.Random) -> bytes:
    """Return ``data`` with one to four things done to it."""
    spoiled = bytearray(data)
    for _ in range(chance.randint(1, 4)):
        at = chance.randrange(len(spoiled) + 1)
        end = min(len(spoiled), at + chance.randint(1, 40))
        what = chance.randrange(6)
        if what == 0 and spoiled:
            spoiled[at % len(spoiled)] ^= 1 << chance.randrange(8)
        elif what == 1:
            del spoiled[at:end]
        elif what == 2:
            spoiled[at:at] = chance.choice(PIECES)
        elif what == 3:
            spoiled[at:end] = chance.choice(PIECES)
        elif what == 4:
            spoiled[at:at] = spoiled[at:end] * chance.randint(1, 8)
        else:
            del spoiled[at:]
    return bytes(spoiled)


def seeds() -> list[tuple[str, bytes]]:
    golden = GOLDEN.read_bytes()
    small = json.loads(golden)
    tiny = {
        "format": "rigbuilder.card",
        "version": 1,
        "name": "a",
        "lure": {"weight": "5 g"},
        "n": [1, 2.5, None],
    }
    return [
        ("card", golden),
        ("card", json.dumps(tiny).encode()),
        ("set", sets.set_bytes([small, tiny])),
        ("set", sets.set_bytes([])),
        ("text", sets.to_text(tiny).encode()),
        ("text", b"> See this:\n> ```\n" + sets.to_text(small).encode() + b"\n> ``` Tight lines!"),
    ]


READERS: dict[str, Callable[[bytes], Any]] = {
    "card": cardfile.parse_card,
    "set": sets.parse_set,
    "text": lambda data: sets.from_text(data.decode("utf-8", "surrogateescape")),
}


class Lines:
    """Which lines of the watched modules were run."""

    def __init__(self) -> None:
        self.seen: set[tuple[str, int]] = set()

    def trace(self, frame: FrameType, event: str, argument: Any) -> Any:
        if frame.f_code.co_filename not in WATCHED:
            return None
        self.seen.add((frame.f_code.co_filename, frame.f_lineno))
        return self.trace


def attempt(kind: str, data: bytes) -> str:
    """Read one input; return "read" or "refused". Anything else that is raised ends the run."""
    try:
        document = READERS[kind](data)
    except CardError as refusal:
        if not str(refusal).isprintable():
            raise AssertionError(f"a message that cannot be shown: {refusal!s:.200}") from None
        return "refused"
    finally:
        if kind == "card":
            listing.salvage(data)
    if kind == "card":
        again = cardfile.parse_card(cardfile.card_bytes(document))
        if not codec.same(again, document):
            raise AssertionError("what was read does not survive being written")
    return "read"


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    os.nice(10)
    chance, pool, lines = random.Random(seed), seeds(), Lines()
    tally = {"read": 0, "refused": 0, "joined the seeds": 0}
    slowest = 0.0
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    start = time.monotonic()
    for number in range(count):
        kind, data = pool[chance.randrange(len(pool))]
        data = damage(data, chance)
        watched = number % 20 == 0  # watching is slow
        known = len(lines.seen)
        if watched:
            sys.settrace(lines.trace)
        began = time.perf_counter()
        try:
            tally[attempt(kind, data)] += 1
        except Exception:
            Path("fuzz-failure.bin").write_bytes(data)
            print(f"input {number} ({kind}) is kept in fuzz-failure.bin")
            raise
        finally:
            sys.settrace(None)
        slowest = max(slowest, time.perf_counter() - began)
        if watched and len(lines.seen) > known and len(data) < 20_000:
            pool.append((kind, data))
            tally["joined the seeds"] += 1
    grown_mb = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) / 1000
    print(f"{count:,} inputs, seed {seed}, {time.monotonic() - start:.0f} s")
    for what, value in tally.items():
        print(f"{what:<24}{value:>12,}")
    print(f"{'slowest, ms':<24}{slowest * 1000:>12.1f}\n{'memory grown, MB':<24}{grown_mb:>12.1f}")
    sys.exit(slowest > 1 or grown_mb > 200)


if __name__ == "__main__":
    main()
