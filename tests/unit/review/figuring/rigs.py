"""Rigs for the tests of figures: a plain one to change, and the usual ones."""

from typing import Any

from rigbuilder.model.rig import Backing, Capacity, Knots, Line, Lure, Reel, Rig, Rod
from rigbuilder.reference.load import load
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.words import Action, LineType, Power, Presentation, ReelKind
from rigbuilder.review.facts import Facts
from rigbuilder.review.figures import figures

REFERENCE = load()


def line(kind: LineType = LineType.NYLON, pounds: float | None = 12.0, **said: Any) -> Line:
    """A line of a type and test [lb]."""
    return Line(type=kind, test_n=None if pounds is None else pounds * LBF_N, **said)


def backing(pounds: float = 12.0, **said: Any) -> Backing:
    """Nylon backing."""
    return Backing(type=LineType.NYLON, test_n=pounds * LBF_N, knot="double uni", **said)


def reel(**said: Any) -> Reel:
    """A casting reel that says 100 m of 0.30 mm."""
    label = (Capacity(length_m=100.0, diameter_m=0.30e-3),)
    return Reel(**{"kind": ReelKind.BAITCASTING, "capacity": label, "ratio": 7.0, "size": "150"} | said)


def rig(**said: Any) -> Rig:
    """A spinnerbait on a medium-heavy rod, still water, a cast of 30 m."""
    plain = {
        "name": "test",
        "presentation": Presentation.SINKING,
        "lure": Lure(technique="spinnerbait", weight_kg=0.0142),
        "rod": Rod(length_m=2.1, power=Power.MEDIUM_HEAVY, action=Action.FAST),
        "reel": reel(),
        "main": line(),
        "knots": Knots(lure="palomar", arbor="arbor"),
        "drag_n": 20.0,
        "cast_m": 30.0,
    }
    return Rig(**plain | said)


def facts(*rigs: Rig, **options: Any) -> list[Facts]:
    """The figures of rigs."""
    return figures(rigs, [REFERENCE.techniques[one.technique] for one in rigs], REFERENCE, **options)


def one(**said: Any) -> Facts:
    """The figures of the plain rig with changes."""
    return facts(rig(**said))[0]
