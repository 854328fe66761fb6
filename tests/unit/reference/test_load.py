"""The shipped reference as a whole: complete, consistent, asked by name."""

import pytest

from rigbuilder.reference.load import UnknownName, load
from rigbuilder.reference.words import HookClass, LineType, Power, ReelKind

REFERENCE = load()


@pytest.mark.parametrize(
    ("part", "count"),
    [
        ("techniques", 59),
        ("knots", 28),
        ("line_types", 8),
        ("adjusters", 14),  # the trade's thirteen and the weight of the lure within its technique
        ("mistakes", 48),
        ("disagreements", 23),
        ("glossary", 87),
        ("safety", 13),
        ("spinning_limits", 7),
        ("respool", 10),
    ],
)
def test_nothing_is_missing(part: str, count: int) -> None:
    assert len(getattr(REFERENCE, part)) == count


def test_every_line_type_hook_class_and_power_has_its_row() -> None:
    assert set(REFERENCE.line_types) == set(LineType)
    assert set(REFERENCE.hooks) == set(HookClass)
    assert [row.power for row in REFERENCE.rods.powers] == list(Power)


@pytest.mark.parametrize("asked", ["hollow-body frog", "FROG", " Hollow  Frog ", "frog"])
def test_a_technique_answers_to_its_names_in_any_case(asked: str) -> None:
    assert REFERENCE.technique(asked).name == "hollow-body frog"


@pytest.mark.parametrize(
    ("asked", "name"),
    [("Double Palomar", "double palomar"), ("clinch", "improved clinch"), ("FG knot", "fg")],
)
def test_a_knot_answers_to_its_names_in_any_case(asked: str, name: str) -> None:
    assert REFERENCE.knot(asked).name == name


@pytest.mark.parametrize(("asked", "nearest"), [("wacky rg", "wacky rig"), ("dropshoot", "dropshot")])
def test_an_unknown_technique_is_refused_with_the_nearest_names(asked: str, nearest: str) -> None:
    with pytest.raises(UnknownName) as refused:
        REFERENCE.technique(asked)
    assert nearest in refused.value.nearest
    assert asked in str(refused.value)


def test_an_unknown_knot_far_from_all_is_refused_plainly() -> None:
    with pytest.raises(UnknownName, match="there is no knot called “zzzz”"):
        REFERENCE.knot("zzzz")


@pytest.mark.parametrize("kind", ["techniques", "knots"])
def test_no_two_rows_share_a_name(kind: str) -> None:
    names = [name.casefold() for row in getattr(REFERENCE, kind).values() for name in row.names]
    assert len(names) == len(set(names))


@pytest.mark.parametrize(
    ("size", "label"), [(500, "500"), (1000, "1000"), (2500, "2500"), (3500, "3000"), (8000, "5000-6000")]
)
def test_spinning_limits_are_found_by_size(size: float, label: str) -> None:
    assert REFERENCE.spinning_limit(size).label == label


@pytest.mark.parametrize(
    ("kind", "size", "row"), [(ReelKind.BAITCASTING, 150, "150"), (ReelKind.SPINNING, 2600, "2500")]
)
def test_reels_are_found_by_size(kind: ReelKind, size: float, row: str) -> None:
    assert REFERENCE.reel(kind, size).size == row


def test_larger_reels_hold_more_and_throw_stiffer_line() -> None:
    for kind in (ReelKind.BAITCASTING, ReelKind.SPINNING):
        held = [row.capacity_nylon_12lb_m.typical for row in REFERENCE.reels if row.reel is kind]
        assert held == sorted(held)
    for row, larger in zip(REFERENCE.spinning_limits, REFERENCE.spinning_limits[1:], strict=False):
        assert row.nylon_max_lb < larger.nylon_max_lb
        assert row.fluorocarbon_max_lb < row.nylon_max_lb


def test_mappings_cannot_be_written_to() -> None:
    with pytest.raises(TypeError):
        REFERENCE.techniques["x"] = None  # type: ignore[index]
