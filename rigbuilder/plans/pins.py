"""Which two of backing, main line and lip gap are held, so that the third follows."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from rigbuilder.reference.ranges import Span
from rigbuilder.reference.words import ReelKind
from rigbuilder.review.case import Case


class Quantity(StrEnum):
    """The three quantities of a fill."""

    BACKING = "backing"
    MAIN = "main"
    LIP_GAP = "lip_gap"


class Origin(StrEnum):
    """Why a quantity is held."""

    PINNED = "pinned"
    CARD = "as the card says"
    PRACTICE = "common practice"
    NONE = "no backing"


@dataclass(frozen=True, slots=True)
class Pin:
    """A quantity that is held, its value [m], and why."""

    value_m: float
    origin: Origin


Pins = Mapping[Quantity, Pin]


def gap_bounds(case: Case) -> Span:
    """Return practice's lip gap [m] for the kind of reel."""
    limits = case.reference.filling.limits
    casting = case.rig.reel.kind is ReelKind.BAITCASTING
    return limits.lip_gap_casting_m if casting else limits.lip_gap_spinning_m


def has_backing(case: Case) -> bool:
    """Tell whether there is backing under the main line."""
    return case.rig.backing is not None


def pins(case: Case) -> tuple[dict[Quantity, Pin], tuple[Quantity, ...]]:
    """Return the two quantities that are held, and which of the person's pins could not be kept.

    What the person pinned comes first, then what the card says is on the reel, then practice.
    """
    wishes = list(_wishes(case).items())
    held = dict(wishes[:2])
    dropped = tuple(name for name, pin in wishes[2:] if pin.origin is Origin.PINNED)
    return held, dropped


def _wishes(case: Case) -> dict[Quantity, Pin]:
    rig = case.rig
    found: dict[Quantity, Pin] = {}

    def offer(name: Quantity, value_m: float | None, origin: Origin) -> None:
        if value_m is not None and name not in found:
            found[name] = Pin(value_m, origin)

    if not has_backing(case):
        offer(Quantity.BACKING, 0.0, Origin.NONE)
    offer(Quantity.MAIN, rig.fill.main_m, Origin.PINNED)
    offer(Quantity.BACKING, rig.fill.backing_m, Origin.PINNED)
    offer(Quantity.LIP_GAP, rig.fill.lip_gap_m, Origin.PINNED)
    offer(Quantity.MAIN, rig.main.length_m if has_backing(case) else None, Origin.CARD)
    offer(Quantity.LIP_GAP, gap_bounds(case).middle, Origin.PRACTICE)
    offer(Quantity.MAIN, case.facts.reach_m.typical if has_backing(case) else None, Origin.PRACTICE)
    return found
