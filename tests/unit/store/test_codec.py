import json
import os
import random
import resource
import time
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.store.codec import CARD_LIMITS, decode, encode, same
from rigbuilder.store.errors import CannotWrite, CardError, StoreError
from rigbuilder.store.reading import read_file

REFUSED = {
    "empty": (b"", "", "an empty file"),
    "blank": (b" \n\t", "", "an empty file"),
    "zeros": (b"\0" * 4096, "", "zero bytes"),
    "utf-16": ('{"a": 1}'.encode("utf-16"), "", "UTF-16"),
    "not utf-8": (b'{\n"a": "\xe9"}', "line 2", "0xe9"),
    "overlong utf-8": (b'{"a": "\xc0\xaf"}', "line 1", "0xc0"),
    "surrogate in utf-8": (b'{"a": "\xed\xa0\x80"}', "line 1", "0xed"),
    "nan": (b'{"a": [1, NaN]}', "a[1]", "NaN"),
    "infinity": (b'{"a": {"b": -Infinity}}', "a.b", "-Infinity"),
    "1e999": (b'{"a": 1e999}', "a", "1e999"),
    "-1e999": (b'{"a": -1e999}', "a", "-1e999"),
    "2^53 + 1": (b'{"a": 9007199254740993}', "a", "9007199254740993"),
    "5000 digits": (b'{"a": ' + b"9" * 5000 + b"}", "a", "5,000 characters"),
    "key twice": (b'{"main": {"test": "4 lb", "test": "40 lb"}}', "main", "“test” twice"),
    "lone surrogate": (rb'{"a": "\ud800"}', "a", "surrogate"),
    "lone surrogate in key": (rb'{"a": {"\udfff": 1}}', "a", "surrogate"),
    "list": (b"[1]", "", "a list"),
    "text": (b'"card"', "", "nothing but a text"),
    "null": (b"null", "", "nothing but a text"),
    "cut off": (b'{"a": {"b": "c"', "line 1, column 16", "end of the file"),
    "cut off in text": (b'{"a": "bcd', "line 1, column 7", "end of the file"),
    "no comma": (b'{"a": 1 "b": 2}', "line 1, column 9", '“"b": 2}”'),
    "comment": (b'{\n  // note\n  "a": 1}', "line 2, column 3", "//"),
    "single quotes": (b"{'a': 1}", "line 1, column 2", "'a'"),
    "trailing comma": (b'{"a": 1,}', "line 1, column 9", "}"),
    "more after the end": (b'{"a": 1} {}', "line 1, column 10", "{}"),
    "bad escape": (rb'{"a": "\x41"}', "line 1, column 8", "\\x41"),
    "tab in text": (b'{"a": "b\tc"}', "line 1, column 9", ""),
    "33 levels": (b'{"a":' + b"[" * 32 + b"]" * 32 + b"}", "", "brackets"),
    "mismatched": (b'{"a": [}', "line 1, column 8", "}"),
    "python literal": (b'{"a": True}', "line 1, column 7", "True"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_refused_with_place_and_reason(name: str) -> None:
    data, where, found = REFUSED[name]
    with pytest.raises(CardError) as refusal:
        decode(data)
    assert refusal.value.where == where
    assert found in refusal.value.found
    sentence = str(refusal.value)
    assert refusal.value.found in sentence
    assert refusal.value.expected in sentence
    assert sentence.endswith(".")
    assert sentence.isprintable()


@pytest.mark.parametrize(
    ("data", "document"),
    [
        (b'\xef\xbb\xbf{"a": 1}', {"a": 1}),
        (b'{"a": 9007199254740992, "b": -9007199254740992}', {"a": 2**53, "b": -(2**53)}),
        (b'{"a": "[[[[\\\\\\"]]]{{{"}', {"a": '[[[[\\"]]]{{{'}),
        (rb'{"a": "\ud83d\ude00"}', {"a": "\N{GRINNING FACE}"}),
        (b'{"a":' + b"[" * 31 + b"]" * 31 + b"}", None),
        (b"\r\n{}\r\n", {}),
    ],
)
def test_accepted(data: bytes, document: dict[str, object] | None) -> None:
    read = decode(data)
    assert document is None or read == document


HUGE = {
    "20,000 deep": b'{"a":' + b"[" * 20_000 + b"]" * 20_000 + b"}",
    "100,000 deep objects": b'{"a":' * 100_000,
    "1,000,000 items": b"[" + b"0," * 499_000 + b"0]",
    "300,000 empty lists": b"[" + b"[]," * 300_000 + b"[]]",
    "one text of 1 MB": b'{"a": "' + b"x" * 1_100_000 + b'"}',
    "10,000,000 digits": b'{"a": ' + b"9" * 10_000_000 + b"}",
    "escaped quotes without end": b'{"a": "' + b'\\"' * 400_000,
    "quotes": b'"' * 900_000,
    "backslashes": b'{"a": "' + b"\\" * 900_001,
    "200,000 equal keys": b"{" + b'"":0,' * 199_000 + b'"":0}',
}


@pytest.mark.parametrize("name", HUGE)
def test_huge_inputs_are_refused_quickly(name: str) -> None:
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    start = time.process_time()
    with pytest.raises(CardError):
        decode(HUGE[name])
    assert time.process_time() - start < 0.2
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < 50_000  # kilobytes


def test_a_file_of_100_mb_is_not_read(tmp_path) -> None:
    path = tmp_path / "large.rigcard"
    path.touch()
    os.truncate(path, 100_000_000)
    start = time.process_time()
    with pytest.raises(CardError, match="100,000,000 bytes, expected at most 1,000,000 bytes"):
        read_file(path, limit=CARD_LIMITS.size)
    assert time.process_time() - start < 0.05


def refusal_of(call: Callable[[Any], Any], argument: Any) -> CardError | None:
    try:
        call(argument)
    except CardError as refusal:
        return refusal
    return None


def test_every_prefix_of_a_card_is_refused(golden) -> None:
    data = golden("v1.rigcard").rstrip()
    for end in range(len(data)):
        with pytest.raises(CardError):
            decode(data[:end])


def test_bit_flips_never_escape(golden) -> None:
    data = golden("v1.rigcard")
    chance = random.Random(7)
    unharmed = 0
    for _ in range(1000):
        flipped = bytearray(data)
        flipped[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
        refusal = refusal_of(decode, bytes(flipped))
        unharmed += refusal is None
        assert refusal is None or str(refusal).isprintable()
    assert 0 < unharmed < 1000  # some only change a letter, which no reader can notice


JSON = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(2**53), 2**53)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(st.characters(exclude_categories=["Cs"])),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=6), inner, max_size=4),
    max_leaves=20,
)


@given(st.dictionaries(st.text(max_size=6), JSON, max_size=6))
@settings(max_examples=150, deadline=None)
def test_round_trip(document) -> None:
    refusal = refusal_of(encode, document)
    if refusal is not None:
        assert "surrogate" in refusal.found
        return
    data = encode(document)
    assert same(decode(data), document)
    assert encode(decode(data)) == data
    assert list(decode(data)) == list(document)


@given(st.binary(max_size=200) | st.text(alphabet='{}[]":,\\ue0d8aN1-.', max_size=40).map(str.encode))
@settings(max_examples=200, deadline=None)
def test_any_bytes_give_a_document_or_a_card_error(data: bytes) -> None:
    refusal = refusal_of(decode, data)
    assert refusal is None or str(refusal).isprintable()


@pytest.mark.parametrize(
    "document",
    [
        {"a": float("nan")},
        {"a": float("inf")},
        {"a": 2**53 + 1},
        {"a": "\ud800"},
        {"\ud800": 1},
        {"a": (1, 2)},
        {"a": {1: 2}},
        {"a": {1, 2}},
        {"a": b"bytes"},
        {"a": "x" * 1_000_000},
        {"a": json.loads("[" * 40 + "]" * 40)},
    ],
)
def test_what_cannot_be_kept_exactly_is_not_written(document) -> None:
    with pytest.raises(CannotWrite, match="cannot be saved"):
        encode(document)


def test_endless_documents_are_refused() -> None:
    endless: dict[str, object] = {}
    endless["a"] = endless
    deep: list[object] = []
    for _ in range(5000):
        deep = [deep]
    for document in (endless, {"a": deep}):
        with pytest.raises(StoreError):
            encode(document)


def test_one_is_not_true() -> None:
    assert not same({"a": 1}, {"a": True})
    assert not same([1], [1.0])
    assert same({"a": [1, {"b": None}]}, {"a": [1, {"b": None}]})
