"""Throw damaged and invented labels at the label reader and at the quantity reader; neither may break.

Run: python -m tests.benchmarks.fuzz_labels [INPUTS] [SEED]

The reader of labels may not raise at all, the reader of quantities nothing but QuantityError. Prints how
many texts were read, what became of them, the slowest ones and the greatest memory.
"""

import json
import random
import resource
import sys
import time
from collections import Counter
from pathlib import Path
from typing import get_args

from rigbuilder.model.labels.label import KEYS
from rigbuilder.model.labels.understand import MAX_TEXT, understand
from rigbuilder.model.labels.understood import LabelKind
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import QuantityError, parse, show

TESTS = Path(__file__).parents[1]
CORPORA = ("unit/model/labels/corpus.json", "unit/model/labels/corpus_second.json", "blind/labels.json")
KINDS: tuple[LabelKind, ...] = get_args(LabelKind)
PIECES = (
    *(
        "0",
        "1",
        "12",
        "7",
        "0.28",
        ".5",
        ",",
        ".",
        "-",
        "–",
        "~",
        "/",
        ":",
        "(",
        ")",
        "'",
        '"',
        "+",
        " ",
        "\n",
        "\x00",
    ),
    *(
        "lb",
        "kg",
        "oz",
        "g",
        "m",
        "mm",
        "cm",
        "ft",
        "in",
        "yd",
        "PE",
        "No.",
        "#",
        "号",
        "lb/yd",
        ":1",
        "MH",
        "XF",
    ),
    *(
        "max",
        "bis",
        "to",
        "and",
        "drag",
        "Bremse",
        "per turn",
        "mono",
        "tresse",
        "½",
        "１",
        "²",
        "İ",
        "ß",
        "\u0301",
    ),
)
SLOW_MS = 50.0
KEPT = 5


def seeds() -> list[str]:
    """Every label text of the corpora."""
    return [
        entry["text"] for name in CORPORA for entry in json.loads((TESTS / name).read_text(encoding="utf-8"))
    ]


def damaged(chance: random.Random, texts: list[str]) -> str:
    """One text made from the seeds: cut, joined, repeated, with pieces and characters put in or left out."""
    text = chance.choice(texts)
    for _ in range(chance.randint(1, 4)):
        at = chance.randint(0, len(text))
        match chance.randint(0, 5):
            case 0:
                text = text[:at] + chance.choice(PIECES) + text[at:]
            case 1:
                text = text[:at] + text[at + chance.randint(1, 4) :]
            case 2:
                text = text[:at] + chance.choice(texts)[chance.randint(0, 9) :]
            case 3:
                text = text[:at] + text[at : at + 8] * chance.randint(2, 40)
            case 4:
                text = (
                    text[:at]
                    + chr(chance.choice((chance.randint(1, 127), chance.randint(128, 0x2FFF))))
                    + text[at:]
                )
            case _:
                text = "".join(chance.choice(PIECES) for _ in range(chance.randint(1, 80)))
    return text[: MAX_TEXT + 1]


def slice_of(chance: random.Random, text: str) -> str:
    """A short stretch that starts with a figure if there is one."""
    figures = [at for at, char in enumerate(text) if char.isdigit()] or [0]
    at = chance.choice(figures)
    return text[at : at + chance.randint(2, 14)]


def read(kind: LabelKind, text: str) -> str:
    """Read one label; what became of it."""
    found = understand(kind, text)
    json.loads(found.as_json())
    if not set(found.understood) <= set(KEYS[kind]):
        raise AssertionError(f"unknown keys in {found.understood}")
    spans = [(part.start, part.end) for part in found.parts] + [(d.start, d.end) for d in found.doubtful]
    if not all(0 <= start <= end <= len(text) for start, end in spans):
        raise AssertionError(f"{spans} lie outside the text")
    return "understood" if found.values else "doubtful" if found.doubtful else "not understood"


def measure(text: str, dimension: Dimension) -> str:
    """Read one quantity and its canonical text again; what became of it."""
    try:
        quantity = parse(text, dimension)
    except QuantityError:
        return "quantity refused"
    if parse(show(quantity), dimension) != quantity:
        raise AssertionError(f"{show(quantity)} does not read back")
    return "quantity read"


def main(inputs: int, seed: int) -> int:
    """Run; returns the number of texts that broke a reader."""
    chance = random.Random(seed)
    texts = seeds()
    outcomes: Counter[str] = Counter()
    slowest: list[tuple[float, LabelKind, str]] = []
    started = time.perf_counter()
    for _ in range(inputs):
        text, kind = damaged(chance, texts), chance.choice(KINDS)
        before = time.perf_counter()
        try:
            outcomes[read(kind, text)] += 1
            took = (time.perf_counter() - before) * 1000
            outcomes[measure(slice_of(chance, text), chance.choice(list(Dimension)))] += 1
        except Exception as error:
            outcomes["BROKEN"] += 1
            if outcomes["BROKEN"] <= KEPT:
                print(f"{kind} {text!r}: {type(error).__name__}: {error}")
            continue
        slowest = sorted([*slowest, (took, kind, text)], reverse=True)[:KEPT]
    seconds = time.perf_counter() - started
    print(f"{inputs} texts in {seconds:.0f} s ({seconds / inputs * 1000:.2f} ms each): {dict(outcomes)}")
    for took, slow_kind, text in slowest:
        print(f"{took:7.1f} ms {slow_kind:5} {len(text)} characters: {text[:70]!r}")
    print(f"memory {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB")
    print(f"over {SLOW_MS:.0f} ms: {sum(took > SLOW_MS for took, _, _ in slowest)} of the slowest {KEPT}")
    return outcomes["BROKEN"]


if __name__ == "__main__":
    numbers = [int(argument) for argument in sys.argv[1:]]
    sys.exit(1 if main(*numbers, *(20_000, 1)[len(numbers) :]) else 0)
