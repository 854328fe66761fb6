"""The middle way between two jobs, and what it costs at either end."""

import pytest

from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.reference.words import LineType, Rank
from rigbuilder.review import offered
from rigbuilder.review.middle import Middle, middle_data, middle_text, middle_ways


def ways(one: str, other: str) -> tuple[Middle, ...]:
    """Return the compromises between two techniques by name."""
    reference = load()
    return middle_ways(reference.technique(one), reference.technique(other), reference, House.shipped())


PAIRS = [
    ("flipping jig", "texas rig"),
    ("spinnerbait", "square-bill crankbait"),
    ("ned rig", "drop shot"),
    ("walking bait", "popper"),
]


@pytest.mark.parametrize(("one", "other"), PAIRS)
def test_middle_lies_between_the_ends_and_names_what_is_sold(one: str, other: str) -> None:
    found = ways(one, other)
    assert found
    for way in found:
        low, high = sorted(end.wish_lb for end in way.ends)
        assert low <= way.best_lb <= high
        assert way.best_lb in way.tests_lb
        assert set(way.tests_lb) <= set(map(float, offered.tests_lb()[way.type])) | {way.best_lb}
        assert all(end.technique.lines[way.type].rank in (Rank.FIRST_CHOICE, Rank.WORKS) for end in way.ends)


@pytest.mark.parametrize(("one", "other"), PAIRS)
def test_cost_is_said_on_the_right_side_at_each_end(one: str, other: str) -> None:
    for way in ways(one, other):
        for end in way.ends:
            if end.steps > 0:
                assert "heavier" in end.cost
                assert way.best_lb > end.wish_lb
            elif end.steps < 0:
                assert "lighter" in end.cost
                assert way.best_lb < end.wish_lb
            else:
                assert end.cost == "costs nothing here"


def test_same_either_way_round() -> None:
    there, back = ways("flipping jig", "texas rig"), ways("texas rig", "flipping jig")
    assert {(way.type, way.best_lb) for way in there} == {(way.type, way.best_lb) for way in back}


def test_compromise_without_reasons_against_it_comes_first() -> None:
    found = ways("flipping jig", "texas rig")
    assert found[0].type is LineType.FLUOROCARBON
    assert not any(end.grave for end in found[0].ends)
    assert [way.grave for way in found] == sorted(way.grave for way in found)


def test_jobs_too_far_apart_bring_reasons_against_every_compromise() -> None:
    assert all(way.grave for way in ways("ned rig", "hollow-body frog"))


def test_no_common_line_is_said_so() -> None:
    reference = load()
    one, other = reference.technique("musky spinner"), reference.technique("float rig")
    found = tuple(way for way in ways("musky spinner", "float rig") if not way.grave)
    assert found == ()
    assert "No one line does" in middle_text((), one, other)


def test_data_and_text_tell_the_same() -> None:
    reference = load()
    one = reference.technique("flipping jig")
    found = ways("flipping jig", "flipping jig")
    text = middle_text(found, one, one)
    for row in middle_data(found):
        assert f"{row['type']} " in text
        for end in row["ends"]:
            assert end["cost"] in text
    assert "light end" in text
