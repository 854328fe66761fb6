import copy

import pytest

from rigbuilder.store.errors import CardError, NewerVersion
from rigbuilder.store.migrations import CURRENT, STEPS, bring_up_to_date


def _second(card):
    card["main"]["test"] = card["main"].pop("strength")
    return card | {"version": 2}


def _third(card):
    return card | {"version": 3, "tags": []}


def test_steps_are_taken_one_by_one_and_the_original_stays() -> None:
    old = {"version": 1, "main": {"strength": "8 lb"}}
    before = copy.deepcopy(old)
    new = bring_up_to_date(old, current=3, steps={1: _second, 2: _third})
    assert new == {"version": 3, "main": {"test": "8 lb"}, "tags": []}
    assert old == before
    assert bring_up_to_date(new, current=3, steps={}) is new


def test_a_step_that_does_not_move_the_version_is_a_fault_of_ours() -> None:
    with pytest.raises(AssertionError, match="from version 1"):
        bring_up_to_date({"version": 1}, current=2, steps={1: lambda card: card})


@pytest.mark.parametrize("version", [CURRENT + 1, CURRENT + 100])
def test_newer_versions_are_refused(version) -> None:
    with pytest.raises(NewerVersion, match="Update Rigbuilder") as refusal:
        bring_up_to_date({"version": version})
    assert refusal.value.version == version


@pytest.mark.parametrize("version", ["1", "1.10", 1.0, True, 0, -1, None, [1]])
def test_nonsense_versions_are_refused(version) -> None:
    with pytest.raises(CardError, match="whole number"):
        bring_up_to_date({"version": version})


def test_there_is_a_step_for_every_older_version(golden) -> None:
    assert sorted(STEPS) == list(range(1, CURRENT))
    for version in range(1, CURRENT + 1):
        assert golden(f"v{version}.rigcard")
