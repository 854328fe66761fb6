"""Every joint of a rig: which knots may stand there, ranked by the same review that grades the rig.

A knot is judged by putting it on the rig and asking the rules about knots and joints; what
they say is the reason against it. Among those that nothing is said against, practice's own
comes first, then what passes the guides where it must, then what holds most.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np

from rigbuilder.mechanics.arrays import Array
from rigbuilder.model import practice
from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Line, Rig
from rigbuilder.plans.known import spread_one
from rigbuilder.plans.lines import straight_break, thickness
from rigbuilder.reference.knots import Knot
from rigbuilder.reference.ranges import LBF_N, Range
from rigbuilder.reference.words import GuidePassage, JointPlace, LineType
from rigbuilder.review.case import Case
from rigbuilder.review.core import Severity
from rigbuilder.review.engine import lay_out
from rigbuilder.review.figuring.chain import ANY_KNOT
from rigbuilder.review.rules import joints as joint_rules
from rigbuilder.review.rules import knots as knot_rules
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import FROM_MEMORY, Source

_RULES = (*knot_rules.RULES, *joint_rules.RULES)
_PASSAGE = {
    GuidePassage.BEST: 4, GuidePassage.GOOD: 3, GuidePassage.FAIR: 2, GuidePassage.POOR: 1,
    GuidePassage.NOT_MEANT: 0,
}  # fmt: skip
_SLEEVE_FROM_LB = 60.0  # lighter single strands are tied, not crimped [lb], common practice
_IN_GUIDES_FROM = 0.6  # a leader of this share of the rod is wound into its rings [1], from memory


@dataclass(frozen=True, slots=True)
class Candidate:
    """A knot for a joint: its share of the weaker line and what it bears [N], and what speaks against it."""

    knot: Knot
    share: Range
    strength_n: Range
    sources: tuple[Source, ...]
    severity: Severity
    against: str
    reason: str

    @property
    def suits(self) -> bool:
        """Return whether nothing speaks against it."""
        return self.severity <= Severity.NOTE


@dataclass(frozen=True, slots=True)
class Joint:
    """One joint: where, between which lines, how much thicker one is; ``path`` is its place on the card."""

    key: str
    title: str
    path: str
    part: Part
    lines: tuple[Line, ...]
    ratio: Range | None
    present: str | None
    through_guides: bool
    candidates: tuple[Candidate, ...]

    @property
    def proposed(self) -> Candidate | None:
        """Return the knot that is proposed."""
        return self.candidates[0] if self.candidates and self.candidates[0].suits else None


@dataclass(frozen=True, slots=True)
class _Place:
    key: str
    title: str
    path: str
    part: Part
    serves: tuple[JointPlace, ...]
    lines: tuple[Line, ...]
    usual: str | None
    present: str | None
    through_guides: bool = False
    tie: Callable[[Rig, str], Rig] | None = None


def joints(case: Case, speaker: Speaker) -> tuple[Joint, ...]:
    """Return every joint of a rig from the spool to the lure, each with its knots, the proposed one first."""
    return tuple(_joint(place, case, speaker) for place in _places(case))


def _places(case: Case) -> list[_Place]:
    rig, found = case.rig, []
    backing, leader, end = rig.backing, rig.leader, case.end
    under: Line = backing or rig.main
    found.append(_Place("arbor", "on the spool", "knots.arbor", Part.KNOTS, (JointPlace.ARBOR,), (under,),
                        "arbor", rig.knots.arbor))  # fmt: skip
    if backing is not None:
        found.append(_Place("backing", "backing to main line", "backing.knot", Part.BACKING,
                            (JointPlace.BACKING,), (backing, rig.main), "double uni", backing.knot,
                            tie=_tie_backing))  # fmt: skip
    if rig.hardware.swivel_n is not None:
        lines = [("swivel, reel side", rig.main)]
        lines += [("swivel, lure side", leader)] if leader is not None else []
        serves = (JointPlace.SWIVEL,)
        found += [_Place(title.replace(", ", " "), title, "", Part.KNOTS, serves, (line,), None, None)
                  for title, line in lines]  # fmt: skip
    elif leader is not None:
        wire = leader.type is LineType.WIRE
        joins = (JointPlace.WIRE, JointPlace.LINE_TO_LEADER) if wire else (JointPlace.LINE_TO_LEADER,)
        usual = practice.joint_for(leader.type, rig.main, leader.test_n or 0.0)
        found.append(_Place("leader", "main line to leader", "leader.knot", Part.LEADER, joins,
                            (rig.main, leader), usual, leader.knot, _in_guides(case),
                            _tie_leader))  # fmt: skip
    usual = practice.lure_knot_for(case.technique, end)
    found.append(_Place("lure", "to the lure", "knots.lure", Part.KNOTS,
                        (JointPlace.TERMINAL, JointPlace.LOOP), (end,), usual, rig.knots.lure,
                        tie=_tie_lure))  # fmt: skip
    return found


def _in_guides(case: Case) -> bool:
    leader, rod = case.leader, case.rig.rod.length_m or case.technique.rod.length_m.middle
    return leader is not None and (leader.length_m or 0.0) > _IN_GUIDES_FROM * rod


def _tie_lure(rig: Rig, name: str) -> Rig:
    return rig.with_(knots=rig.knots.with_(lure=name))


def _tie_leader(rig: Rig, name: str) -> Rig:
    return rig if rig.leader is None else rig.with_(leader=rig.leader.with_(knot=name))


def _tie_backing(rig: Rig, name: str) -> Rig:
    return rig if rig.backing is None else rig.with_(backing=rig.backing.with_(knot=name))


def _joint(place: _Place, case: Case, speaker: Speaker) -> Joint:
    knots = [knot for knot in case.reference.knots.values() if any(map(knot.serves, place.serves))]
    said = _against(place, knots, case, speaker)
    weaker = min(place.lines, key=lambda line: line.test_n or float("inf"))
    straight = {id(line): straight_break(line, case.reference) for line in place.lines}
    found = [_candidate(knot, place, weaker, straight, said[knot.name]) for knot in knots]
    return Joint(
        place.key, place.title, place.path, place.part, place.lines, _ratio(place.lines, case),
        place.present, place.through_guides, tuple(sorted(found, key=lambda one: _rank(one, place))),
    )  # fmt: skip


def _against(
    place: _Place, knots: list[Knot], case: Case, speaker: Speaker
) -> dict[str, tuple[Severity, str]]:
    """Return the worse of what the rules about knots say of each knot here, and what the catalogue says."""
    said = {knot.name: _by_catalogue(knot, place) for knot in knots}
    if place.tie is None or not knots:
        return said
    tied = [place.tie(case.rig, knot.name) for knot in knots]
    for knot, one in zip(knots, lay_out(tied, case.reference, case.house), strict=True):
        severity, words = _worst(one, place, speaker)
        if severity > said[knot.name][0]:
            said[knot.name] = (severity, words)
    return said


def _worst(tied: Case, place: _Place, speaker: Speaker) -> tuple[Severity, str]:
    """Return the worst that the rules about knots and joints say of a rig at one place."""
    worst, words = Severity.RIGHT, ""
    for rule in _RULES:
        hit = rule.check(tied)
        if hit is None or not _here(hit.part or rule.part, place):
            continue
        ruled = tied.house.severity(rule.name)
        severity = hit.severity if ruled is None else Severity[ruled.upper()]
        if severity > worst:
            worst, words = severity, hit.detail(speaker) or hit.headline(speaker)
    return worst, words


def _here(part: Part, place: _Place) -> bool:
    return part is place.part or (place.key == "leader" and part is Part.KNOTS)


def _by_catalogue(knot: Knot, place: _Place) -> tuple[Severity, str]:
    kinds = [line.type for line in place.lines]
    avoided = [str(kind) for kind in kinds if kind in knot.avoid]
    if avoided:
        return Severity.RISK, knot.avoid_note or f"not for {avoided[0]}"
    if not any(kind in knot.suits for kind in kinds):
        return Severity.RISK, f"not made for {kinds[0]}"
    metal = knot.serves(JointPlace.WIRE) and LineType.WIRE not in kinds
    if metal and not knot.serves(JointPlace.BACKING) and _lightest_lb(place) < _SLEEVE_FROM_LB:
        return Severity.RISK, knot.avoid_note or "made for wire"
    return Severity.RIGHT, ""


def _lightest_lb(place: _Place) -> float:
    return min((line.test_n or 0.0) / LBF_N for line in place.lines)


def _candidate(
    knot: Knot, place: _Place, weaker: Line, straight: Mapping[int, Range], said: tuple[Severity, str]
) -> Candidate:
    # A twist or sleeve is made in the wire alone, so it is judged by the wire.
    wires = [line for line in place.lines if line.type is LineType.WIRE and LineType.WIRE in knot.suits]
    line = wires[0] if wires and weaker.type not in knot.suits else weaker
    share = knot.efficiency_in(line.type)
    known = share or Range(*ANY_KNOT)
    strength = spread_one(_times, {"straight_n": straight[id(line)], "share": known})["strength_n"]
    severity, against = said
    sources = knot.sources if share is not None else (FROM_MEMORY,)
    reason = _reason(knot, place, severity, against)
    return Candidate(knot, known, strength, sources, severity, against, reason)


def _times(*, straight_n: Array, share: Array) -> dict[str, Array]:
    return {"strength_n": np.asarray(straight_n * share)}


def _reason(knot: Knot, place: _Place, severity: Severity, against: str) -> str:
    if severity > Severity.NOTE:
        return against
    words = []
    if knot.name == place.usual:
        words.append("what practice ties here")
    if knot.serves(JointPlace.WIRE) and len(place.lines) > 1:
        words.append("makes a loop in the leader, to which the main line is tied")
    if place.through_guides:
        passage = {4: "the slimmest through the rings", 3: "slim enough for the rings"}
        words.append(passage.get(_PASSAGE[knot.guides], "a lump in the rings"))
    if against:
        words.append(against[0].lower() + against[1:])
    return "; ".join(words) or "suits these lines"


def _rank(one: Candidate, place: _Place) -> tuple[float, ...]:
    passage = _PASSAGE[one.knot.guides] if place.through_guides else 0
    usual = one.knot.name == place.usual
    return (float(one.severity), -float(usual), -float(min(passage, 3)), -one.share.typical)


def _ratio(lines: tuple[Line, ...], case: Case) -> Range | None:
    """Return how many times as thick the thicker line is."""
    if len(lines) < 2:
        return None
    one, other = (thickness(line, case.reference).diameter_m for line in lines)
    ratio = Range(one.low / other.high, one.typical / other.typical, one.high / other.low)
    return ratio if ratio.typical >= 1.0 else Range(1 / ratio.high, 1 / ratio.typical, 1 / ratio.low)
