"""Which rigs a check or a caution concerns."""

from collections.abc import Callable

from rigbuilder.reference.words import JointPlace, LineType, ReelKind, RetrieveLoad
from rigbuilder.review.case import Case

Concerns = Callable[[Case], bool]

_SUNK = ("bottom rig", "float", "split shot rig")
_SHEET_METAL = ("casting spoon", "jigging spoon", "blade bait", "weedless spoon", "pike spoon")

_HOT_C = 32.0  # common practice: nylon ages on a deck hotter than about 90 F


def always(_: Case) -> bool:
    """Every rig."""
    return True


def braided(case: Case) -> bool:
    """Rigs on braid."""
    return case.is_braided()


def spinning(case: Case) -> bool:
    """Rigs on a spinning reel."""
    return case.rig.reel.kind is ReelKind.SPINNING


def fishes(*techniques: str) -> Concerns:
    """Rigs for some techniques."""
    return lambda case: case.technique.id in techniques


def has_wire(case: Case) -> bool:
    """Rigs that end in wire."""
    return case.end.type is LineType.WIRE


def has_sinker(case: Case) -> bool:
    """Rigs with a sinker or shot."""
    return bool(case.rig.lure.sinker_kg) or case.technique.lure_class in _SUNK


def joined(case: Case) -> bool:
    """Rigs with a knot between main line and leader."""
    return case.leader is not None and case.leader.knot is not None


def woven(case: Case) -> bool:
    """Rigs whose leader is woven on."""
    return case.leader is not None and case.leader.knot == "fg"


def crimped(case: Case) -> bool:
    """Rigs whose end is crimped or twisted."""
    knot = case.reference.knots.get(case.rig.knots.lure or "")
    return knot is not None and knot.serves(JointPlace.WIRE)


def trebles(case: Case) -> bool:
    """Rigs with trebles."""
    return case.hook.is_treble


def stamped(case: Case) -> bool:
    """Lures with a stamped hole."""
    return case.technique.lure_class in _SHEET_METAL


def hot(case: Case) -> bool:
    """Days on which a deck gets hot."""
    return case.rig.water.air_c is not None and case.rig.water.air_c > _HOT_C


def hard_bottom(case: Case) -> bool:
    """Rigs fished round stones or timber."""
    return str(case.rig.water.cover) in ("rock", "wood", "docks")


def drags(case: Case) -> bool:
    """Rigs drawn along the bottom."""
    return RetrieveLoad.DRAG in case.technique.retrieve_load
