import json
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.store.errors import CannotWrite, CardError, NewerVersion
from rigbuilder.store.sets import MOST_CARDS, export_set, from_text, parse_set, read_set, set_bytes, to_text


def test_a_set_comes_back_as_it_was(tmp_path, make_card) -> None:
    cards = [make_card(id=f"a{number}", name=f"Rod {number}") for number in range(3)]
    export_set(cards, tmp_path / "club.rigset")
    assert read_set(tmp_path / "club.rigset") == cards
    told = json.loads((tmp_path / "club.rigset").read_bytes())
    assert list(told) == ["format", "version", "cards"]


def test_a_single_card_counts_as_a_set_of_one(tmp_path, golden) -> None:
    (tmp_path / "x.rigcard").write_bytes(golden("v1.rigcard"))
    assert len(read_set(tmp_path / "x.rigcard")) == 1


@pytest.mark.parametrize(
    ("change", "where", "found"),
    [
        ({"format": "other"}, "format", "'other'"),
        ({"version": "1"}, "version", "'1'"),
        ({"cards": None}, "cards", "no list"),
        ({"cards": [7]}, "card 1", "something else"),
        ({"cards": [{"format": "rigbuilder.card"}]}, "card 1, version", "no version"),
        ({"cards": [{"version": 1}]}, "card 1, format", "no format"),
        ({"cards": [{}] * (MOST_CARDS + 1)}, "cards", "2,001 cards"),
    ],
)
def test_what_is_refused(change, where, found) -> None:
    told = {"format": "rigbuilder.set", "version": 1, "cards": []} | change
    with pytest.raises(CardError) as refusal:
        parse_set(json.dumps(told).encode())
    assert refusal.value.where == where
    assert found in refusal.value.found


def test_newer_sets_and_cards_are_refused(make_card) -> None:
    for told in (
        {"format": "rigbuilder.set", "version": 2, "cards": []},
        {"format": "rigbuilder.set", "version": 1, "cards": [make_card(version=5)]},
    ):
        with pytest.raises(NewerVersion):
            parse_set(json.dumps(told).encode())


def test_one_card_above_the_limit_spoils_the_set(make_card) -> None:
    told = {
        "format": "rigbuilder.set",
        "version": 1,
        "cards": [make_card(), make_card(notes="x" * 1_000_000)],
    }
    with pytest.raises(CardError, match="card 2"):
        parse_set(json.dumps(told).encode())
    with pytest.raises(CannotWrite):
        set_bytes(told["cards"])
    with pytest.raises(CannotWrite, match="2,001 cards"):
        set_bytes([make_card()] * (MOST_CARDS + 1))


@pytest.mark.parametrize(
    "data",
    [b"[" * 5_000_000, b'{"a":[' + b"{}," * 5_000_000 + b"{}]}", b'"' * 15_000_000, b"x" * 16_000_001],
)
def test_huge_sets_are_refused_quickly(data) -> None:
    start = time.process_time()
    with pytest.raises(CardError):
        parse_set(data)
    assert time.process_time() - start < 0.5


def test_a_card_as_text_says_its_name_first(make_card) -> None:
    text = to_text(make_card(name="Pad\nfrog"))
    assert text.startswith("Rigbuilder card: Pad frog\n\n{")
    assert to_text(make_card(name="")).startswith("Rigbuilder card: without a name\n")
    assert from_text(text) == [make_card(name="Pad\nfrog")]


@pytest.mark.parametrize("name", ["{", '{"', '{ "a": 1}', "}", "a {b} c", '"{'])
def test_any_name_may_stand_before_the_card(make_card, name) -> None:
    assert from_text(to_text(make_card(name=name))) == [make_card(name=name)]


def _quoted(text: str) -> str:
    return "On Monday the coach wrote:\n" + "".join(f"> > {line}\n" for line in text.splitlines())


WRAPPINGS = {
    "bare": str,
    "prose": lambda text: f"Hello Sam,\nuse this {{one}}: it holds.\n\n{text}\n\nTight lines }} :-)\n",
    "fences": lambda text: f"```json\n{text}```\n",
    "mail": _quoted,
    "windows": lambda text: text.replace("\n", "\r\n"),
    "hard spaces": lambda text: text.replace("\n  ", "\n\u00a0\u00a0"),
}


@pytest.mark.parametrize("how", WRAPPINGS)
def test_a_pasted_card_is_found(make_card, how) -> None:
    card = make_card(notes='She said "keep {it} low" \\ and }', name="Élan > über")
    assert from_text(WRAPPINGS[how](to_text(card))) == [card]


def test_several_cards_and_sets_in_one_text(make_card) -> None:
    one, two = make_card(id="a1"), make_card(id="a2")
    text = f"First {to_text(one)} and a set: {set_bytes([two, one]).decode()}"
    assert from_text(text) == [one, two, one]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("", "no card"),
        ("Use 50 lb braid {really}.", "no card"),
        ('{"format": "rigbuilder.card", "version": 1, "name": "a"', "the end of the file"),
        ('{"format": "rigbuilder.card", "version": 1, "a": NaN}', "NaN"),
        ("{" * 100_000, "no card"),
        ('"{' * 100_000, "no card"),
    ],
)
def test_pasted_text_without_a_whole_card(text, found) -> None:
    start = time.process_time()
    with pytest.raises(CardError) as refusal:
        from_text(text)
    assert found in refusal.value.found
    assert str(refusal.value).startswith("This text cannot be read")
    assert time.process_time() - start < 0.5


@given(st.text(alphabet='{}[]":,\\rigbuilde.cast> 1\n', max_size=80))
@settings(max_examples=200, deadline=None)
def test_any_text_gives_cards_or_a_card_error(text) -> None:
    with pytest.raises(CardError):
        from_text(text)
