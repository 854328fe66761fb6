"""What stands for whatever a card leaves unsaid: openly, with its reason, as text to be put on the card.

Conditions, reel and rod come from the technique's usual rig; whatever hangs on
the line (leader, knots, backing, drag) from what practice puts with that line.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from rigbuilder.model import practice
from rigbuilder.model.document import Document, get, is_said
from rigbuilder.model.rig import Leader, Line, LineSize, Reel
from rigbuilder.model.rods import rod_of
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import INCH_M, LBF_N
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import Cover, LabelConvention, LineType, ReelKind

# Common practice: 10 lb and more a PE number are sold, 12 lb is the middle; 4 lb a nylon-scale number.
SIZE_LB = {"PE": 12.0, "No.": 4.0}

_FROM_USUAL = (
    "presentation",
    "lure.hook",
    "lure.buoyancy",
    "rod.length",
    "rod.power",
    "rod.action",
    "reel.kind",
    "reel.ratio",
    "reel.size",
    "water.kind",
    "water.temperature",
    "water.clarity",
    "water.depth",
    "water.cover",
    "water.pressure",
    "water.wind",
    "from",
    "cast",
    "fish.weight",
)
_PLAIN = {
    "main.condition": ("fresh", "line is taken as fresh until the card says otherwise"),
    "water.current": ("0 m/s", "still water is taken until a current is given"),
    "fish.teeth": ("unknown", "nothing is said about toothed fish"),
    "knots.arbor": ("arbor", "the usual knot on a spool"),
}


@dataclass(frozen=True, slots=True)
class Assumed:
    """One value that stands for what was not said: card text, or ``None`` for "there is none"."""

    field: str
    value: str | None
    why: str


class Assumptions:
    """Collects assumed values for one card; ``values`` are the SI values said so far."""

    def __init__(self, document: Document, values: Mapping[str, Any], reference: Reference) -> None:
        self._document = document
        self._values = values
        self._reference = reference
        self.found: list[Assumed] = []
        self._kind = ReelKind.BAITCASTING
        technique = values.get("lure.technique")
        self._technique: Technique | None = reference.techniques.get(technique) if technique else None

    def collect(self) -> list[Assumed]:
        """Return everything assumed, in the order in which the card's fields stand."""
        if self._technique is None:
            return []
        main = self._main()
        if main is not None:
            self._going_with(self._technique, main)
        self._from_usual(self._technique)
        self._convention()
        if main is not None:
            self._hanging_on(self._technique, main)
        for path, (value, why) in _PLAIN.items():
            self._put(path, value, why)
        return self.found

    def _unsaid(self, path: str) -> bool:
        return path not in self._values and not is_said(self._document, path)

    def _put(self, path: str, value: str | None, why: str) -> None:
        if self._unsaid(path) and all(entry.field != path for entry in self.found):
            self.found.append(Assumed(path, value, why))

    def _from_usual(self, technique: Technique) -> None:
        usual = usual_document(technique.id)
        for path in _FROM_USUAL:
            value = get(usual, path)
            if isinstance(value, str):
                self._put(path, value, f"as in the usual rig for the {technique.name}")

    def _going_with(self, technique: Technique, main: Line) -> None:
        """Assume reel and cover that go with the line which was said, where the usual ones would not."""
        usual = usual_document(technique.id)
        first = ReelKind(get(usual, "reel.kind") or technique.reel.kinds[0])
        said = self._values.get("reel.kind")
        kinds = [ReelKind(said)] if said else [first, *(k for k in technique.reel.kinds if k is not first)]
        size = get(usual, "reel.size") if kinds[0] is first else None
        kind, size = practice.reel_for(technique, main, self._reference, kinds=kinds, usual=size)
        if kind is not first:
            self._put("reel.kind", kind, f"what practice throws {main.type} of this test with")
        if size is not None and (kind, size) != (first, get(usual, "reel.size")):
            self._put("reel.size", size, f"a {kind} reel of this size throws the line")
        self._kind = kind
        smooth = technique.base.main.is_braided and not main.type.is_braided
        if smooth and get(usual, "water.cover") == Cover.THICK_GRASS:
            self._put(
                "water.cover", Cover.SPARSE_GRASS, f"practice fishes {main.type} where the grass is thin"
            )

    def _convention(self) -> None:
        text = str(get(self._document, "main.test") or "")
        if isinstance(self._values.get("main.test"), LineSize):
            self._put("main.convention", LabelConvention.JAPANESE_SIZE, "the label gives a size number")
        elif "kg" in text.casefold():
            self._put("main.convention", LabelConvention.EUROPEAN, "the test is printed in kilograms")
        else:
            self._put("main.convention", LabelConvention.US_TEST, "the test is printed in pounds")

    def _main(self) -> Line | None:
        kind, test = self._values.get("main.type"), self._values.get("main.test")
        if kind is None or test is None:
            return None
        return Line(type=LineType(kind), test_n=test_n(test))

    def _hanging_on(self, technique: Technique, main: Line) -> None:
        leader = self._leader(technique, main)
        end: Line = leader or main
        knot = practice.lure_knot_for(technique, end)
        self._put("knots.lure", knot, f"what practice ties in {end.type}")
        backing = practice.backing_for(self._kind, main.type)
        if backing is None or backing.test_n is None:
            self._put("backing", None, "no backing is put under this line")
        elif self._unsaid("backing"):
            why = "braid slips on a bare spool, so practice puts nylon under it"
            self._put("backing.type", backing.type, why)
            self._put("backing.test", _pounds(backing.test_n), why)
            self._put("backing.knot", backing.knot, why)
            self.found.append(Assumed("backing.length", None, "as much as fills the spool"))
        drag = practice.drag_for(technique, main, leader, most_n=self._tackle_bears_n(technique))
        if drag is not None:
            self._put("drag", _drag_words(drag), "the share of the weakest label that practice sets")

    def _leader(self, technique: Technique, main: Line) -> Leader | None:
        if self._unsaid("leader"):
            return self._assumed_leader(technique, main)
        kind = self._values.get("leader.type")
        if kind is None:
            return None
        test = test_n(self._values.get("leader.test")) or main.test_n or LBF_N
        why = "the joint that practice ties between these lines"
        joint = None if self._swivelled() else practice.joint_for(LineType(kind), main, test)
        self._put("leader.knot", joint, why)
        span = technique.leader.length_m
        length = technique.base.leader_m or (span.middle if span else 0.9)
        self._put("leader.length", _inches(length), f"the usual leader for the {technique.name}")
        return Leader(type=LineType(kind), test_n=test, length_m=length)

    def _swivelled(self) -> bool:
        return self._values.get("hardware.swivel") is not None

    def _assumed_leader(self, technique: Technique, main: Line) -> Leader | None:
        leader = practice.leader_for(technique, main, self._reference)
        if leader is None or leader.test_n is None or leader.length_m is None:
            self._put("leader", None, f"practice uses none on {main.type} for the {technique.name}")
            return None
        why = f"practice puts one on {main.type} for the {technique.name}"
        self._put("leader.type", leader.type, why)
        self._put("leader.test", _pounds(leader.test_n), why)
        self._put("leader.length", _inches(leader.length_m), why)
        self._put("leader.knot", leader.knot, why)
        return leader

    def _tackle_bears_n(self, technique: Technique) -> float:
        reel = Reel(kind=self._kind, drag_n=self._values.get("reel.drag"))
        rod = practice.rod_bears_n(technique, rod_of(self._values))
        return min(rod, practice.reel_bears_n(reel, self._reference))


def test_n(value: Any) -> float | None:
    """Return the printed strength [N] of a test that may be given as a size number."""
    if isinstance(value, LineSize):
        return SIZE_LB[value.scale] * value.number * LBF_N
    return None if value is None else float(value)


def _pounds(force_n: float) -> str:
    pounds = force_n / LBF_N
    return f"{round(pounds, 1):g} lb" if pounds < 10 else f"{round(pounds):g} lb"


def _drag_words(force_n: float) -> str:
    """Return a drag as card text, never rounded up past what the tackle bears."""
    pounds = force_n / LBF_N
    return f"{math.floor(pounds * 10 + 1e-6) / 10 if pounds < 10 else math.floor(pounds + 1e-6):g} lb"


def _inches(length_m: float) -> str:
    return f"{round(length_m / INCH_M):g} in"
