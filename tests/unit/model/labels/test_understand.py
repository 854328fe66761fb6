"""Labels, invented but written as the trade writes them, and what must be understood of each."""

import json
from pathlib import Path
from typing import Any, get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.model.labels.label import KEYS
from rigbuilder.model.labels.understand import MAX_TEXT, understand
from rigbuilder.model.labels.understood import Capacity, LabelKind
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.quantity import Quantity, parse

CORPUS = json.loads((Path(__file__).parent / "corpus.json").read_text(encoding="utf-8"))
KINDS: tuple[LabelKind, ...] = get_args(LabelKind)


def close(one: Any, other: Any) -> bool:
    """Equal, numbers to four decimals (an inch is no finite decimal of a foot)."""
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(close(one[key], other[key]) for key in one)
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(close, one, other))
    if isinstance(one, int | float) and isinstance(other, int | float):
        return abs(one - other) < 1e-4
    return bool(one == other)


def test_the_corpus_is_broad() -> None:
    assert len(CORPUS) >= 500
    assert {entry["kind"] for entry in CORPUS} == set(KINDS)


@pytest.mark.parametrize("entry", CORPUS, ids=lambda entry: f"{entry['kind']}: {entry['text']}")
def test_corpus(entry: dict[str, Any]) -> None:
    understanding = understand(entry["kind"], entry["text"])
    assert close(understanding.understood, entry["understood"]), understanding.understood
    assert [doubt.text for doubt in understanding.doubtful] == entry["doubtful"]
    assert list(understanding.not_understood) == entry["not_understood"]
    assert all(doubt.why for doubt in understanding.doubtful)


@pytest.mark.parametrize("entry", CORPUS, ids=lambda entry: f"{entry['kind']}: {entry['text']}")
def test_every_value_has_a_chip_and_every_chip_its_stretch(entry: dict[str, Any]) -> None:
    text = entry["text"]
    understanding = understand(entry["kind"], text)
    assert {part.key for part in understanding.parts} == set(understanding.values)
    for part in (*understanding.parts, *understanding.doubtful):
        assert 0 <= part.start <= part.end <= len(text)
    for doubt in understanding.doubtful:
        assert text[doubt.start : doubt.end].strip() == doubt.text


def test_json_has_exactly_the_promised_form() -> None:
    printed = json.loads(understand("reel", "14/120 lb/yd 7.1:1 15 lb left hand, 10/150").as_json())
    assert printed == {
        "kind": "reel",
        "understood": {
            "ratio": 7.1,
            "drag": {"low": 15, "high": 15, "unit": "lb"},
            "capacity": [
                {
                    "test": {"low": 14, "high": 14, "unit": "lb"},
                    "length": {"low": 120, "high": 120, "unit": "yd"},
                }
            ],
        },
        "not_understood": ["left hand"],
        "doubtful": [{"text": "10/150", "why": "looks like a line capacity without units; lb and yards?"}],
    }


def test_values_are_typed() -> None:
    values = understand("reel", "braid 30/150 lb/yd").values
    capacity = Capacity(
        test=parse("30 lb", Dimension.FORCE), length=parse("150 yd", Dimension.LENGTH), line="braid"
    )
    assert values == {"capacity": (capacity,)}
    length = understand("rod", "7'3\"").values["length"]
    assert isinstance(length, Quantity)
    assert length.si == pytest.approx(2.2098)


def test_parts_say_in_plain_words_what_they_are() -> None:
    parts = understand("rod", "7'3\" H F 30-65 lb 1/2-1 1/4 oz").parts
    assert [part.meaning for part in parts] == [
        "length: 7'3\"",
        "power: heavy",
        "action: fast",
        "line range: 30-65 lb",
        "lure range: 1/2 to 1 1/4 oz",
    ]


@pytest.mark.parametrize("kind", KINDS)
def test_a_text_too_long_is_doubtful_not_read(kind: LabelKind) -> None:
    understanding = understand(kind, "7'3\" " * 100)
    assert not understanding.understood
    assert f"at most {MAX_TEXT}" in understanding.doubtful[0].why


@pytest.mark.parametrize("entry", [e for e in CORPUS if e["kind"] == "rod"][:60], ids=lambda e: e["text"])
def test_capital_letters_do_not_matter(entry: dict[str, Any]) -> None:
    upper = understand("rod", entry["text"].upper())
    lower = understand("rod", entry["text"].lower())
    assert upper.understood == lower.understood == understand("rod", entry["text"]).understood


_PIECES = [
    *(
        "7'3\"",
        "3/8",
        "1/4",
        "1",
        "12",
        "0.28",
        "1,200",
        "1.200",
        ".5",
        "7.1:1",
        "10/150",
        "1/0",
        "0",
        "999999999",
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
        "PE1",
        "No.",
        "#",
        "lb/yd",
        "x8",
        "8x",
        "号",
    ),
    *(
        "mono",
        "braid",
        "drag",
        "max",
        "MH",
        "F",
        "XF",
        "M",
        "per turn",
        "trebles",
        "SP",
        "dives",
        "line",
        "lure",
    ),
    *("cw", "2 pc", "to", "-", "/", ":", "(", ")", "–", "\n", "|", ";", "''", "'", '"', "½", " ", "+", "~"),
    *("é", "İ", "²", "٣", "０", "∞"),
]
_LABEL_LIKE = st.lists(st.sampled_from(_PIECES), max_size=40)


@given(st.one_of(_LABEL_LIKE.map("".join), _LABEL_LIKE.map(" ".join), st.text(max_size=MAX_TEXT + 5)))
@settings(max_examples=150, deadline=1000)
def test_no_text_breaks_or_hangs_the_reading(text: str) -> None:
    for kind in KINDS:
        understanding = understand(kind, text)
        assert set(understanding.understood) <= set(KEYS[kind])
        json.loads(understanding.as_json())


@pytest.mark.parametrize(
    "piece",
    [
        "1",
        "1 ",
        "1-",
        "1/",
        "m",
        "1 1/4 ",
        "10/150 ",
        ".",
        ",",
        " ",
        "max ",
        "pe 1-",
        "1 lb ",
        "(1 ",
        "7'",
        "lb/yd ",
        "lb braid braid braid ",
        "4no 8/140, 10/120 lb/yd Braid 20/180 lb/yd ",
        "drag ",
        "size",
        "double hook ",
        "treble hook 1 ",
    ],
)
@pytest.mark.parametrize("kind", KINDS)
def test_repetition_ends(kind: LabelKind, piece: str) -> None:
    json.loads(understand(kind, (piece * MAX_TEXT)[:MAX_TEXT]).as_json())
