"""A card as typed: paths, changes, differences."""

from hypothesis import given
from hypothesis import strategies as st

from rigbuilder.model.document import differences, drop, get, is_said, leaves, put, put_all

CARD = {"name": "Pad frog", "main": {"type": "braid", "test": "50 lb"}, "leader": None, "tags": ["a"]}

paths = st.lists(st.sampled_from(["main", "leader", "x", "test"]), min_size=1, max_size=3).map(".".join)
texts = st.text(max_size=8)


def test_get_walks_groups_and_stops_at_what_is_no_group() -> None:
    assert get(CARD, "main.type") == "braid"
    assert get(CARD, "main.diameter") is None
    assert get(CARD, "name.first", "nothing") == "nothing"
    assert get(CARD, "leader.type") is None


def test_null_group_says_of_its_fields_that_there_is_none() -> None:
    assert is_said(CARD, "leader")
    assert is_said(CARD, "leader.type")
    assert not is_said(CARD, "backing")
    assert not is_said(CARD, "main.diameter")


@given(paths, texts)
def test_put_is_seen_by_get_and_leaves_the_old_document_alone(path: str, value: str) -> None:
    before = {"main": {"type": "braid"}, "x": "y"}
    after = put(before, path, value)
    assert get(after, path) == value
    assert before == {"main": {"type": "braid"}, "x": "y"}


@given(paths, texts)
def test_drop_takes_back_what_put_said(path: str, value: str) -> None:
    assert not is_said(drop(put({}, path, value), path), path)


def test_put_replaces_a_null_group_by_a_group() -> None:
    assert put(CARD, "leader.type", "nylon")["leader"] == {"type": "nylon"}


def test_differences_name_every_changed_leaf_once() -> None:
    after = put_all(CARD, {"main.test": "65 lb", "drag": "6 lb", "leader": {"type": "nylon"}})
    assert sorted(differences(CARD, after)) == [
        ("drag", None, "6 lb"),
        ("leader", None, None),
        ("leader.type", None, "nylon"),
        ("main.test", "50 lb", "65 lb"),
    ]


def test_leaves_are_in_order() -> None:
    assert [path for path, _ in leaves(CARD)] == ["name", "main.type", "main.test", "leader", "tags"]
