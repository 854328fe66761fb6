import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rigbuilder.store.cardfile import ORDER, card_bytes, id_of, in_order, new_id, parse_card
from rigbuilder.store.codec import same
from rigbuilder.store.errors import CardError, StoreError


def test_every_released_version_is_read(golden) -> None:
    document = parse_card(golden("v1.rigcard"))
    assert document["version"] == 1
    assert document["main"]["test"] == "50 lb"
    assert card_bytes(document) == golden("v1.rigcard")


def test_known_keys_come_in_the_order_of_cards_and_unknown_ones_after(make_card) -> None:
    card = {"zebra": 1, **dict(reversed(make_card().items())), "apple": {"b": 1, "a": 2}}
    text = card_bytes(card).decode()
    keys = list(json.loads(text))
    assert keys == ["format", "version", "id", "name", "tags", "lure", "main", "zebra", "apple"]
    assert list(json.loads(text)["apple"]) == ["b", "a"]
    assert list(json.loads(text)["main"]) == ["type", "test"]
    assert text.endswith("}\n")
    assert '  "name": "Pad frog, rod 3",\n' in text


KEYS = st.sampled_from([key for keys in ORDER.values() for key in keys] + ["x", "y"])
PARTS = st.recursive(
    st.none() | st.text("ab") | st.integers(0, 9), lambda inner: st.dictionaries(KEYS, inner)
)


@given(st.dictionaries(KEYS, PARTS))
@settings(max_examples=40, deadline=None)
def test_order_changes_nothing_else_and_is_stable(card) -> None:
    ordered = in_order(card)
    assert same(ordered, card)
    assert json.dumps(in_order(dict(reversed(ordered.items())))).startswith("{")
    known = [key for key in ordered if key in ORDER[""]]
    assert known == [key for key in ORDER[""] if key in card]
    assert json.dumps(in_order(ordered)) == json.dumps(ordered)


@pytest.mark.parametrize(
    "changes", [{"format": "other"}, {"version": 2}, {"version": None}, {"version": 1.0}]
)
def test_only_current_cards_are_written(make_card, changes) -> None:
    with pytest.raises(CardError):
        card_bytes(make_card(**changes))


def test_endless_cards_are_refused(make_card) -> None:
    card = make_card()
    card["self"] = card
    with pytest.raises(StoreError):
        card_bytes(card)


@pytest.mark.parametrize(
    ("identity", "expected"),
    [
        ("6f0c-2d", "6f0c-2d"),
        ("../x", None),
        ("", None),
        (7, None),
        (None, None),
        ("a" * 65, None),
        ("a\n", None),
    ],
)
def test_only_plain_identities_go_into_file_names(identity, expected) -> None:
    assert id_of({"id": identity}) == expected


def test_new_identities_differ() -> None:
    assert id_of({"id": new_id()}) is not None
    assert new_id() != new_id()
