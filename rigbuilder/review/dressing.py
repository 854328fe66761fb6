"""Another line on the same rig, with what practice would hang on it; and any such change as card text."""

from rigbuilder.model import practice
from rigbuilder.model.rig import Backing, Knots, Leader, Line, Rig
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import INCH_M, LBF_N
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import Condition

Changes = dict[str, str | None]


def pounds(force_n: float) -> str:
    """Return a strength as card text in pounds."""
    return f"{round(force_n / LBF_N, 2):g} lb"


def inches(length_m: float) -> str:
    """Return a length as card text in inches."""
    return f"{round(length_m / INCH_M, 1):g} in"


def tackle_bears_n(rig: Rig, technique: Technique, reference: Reference) -> float:
    """Return the most drag [N] that practice sets on this rod and reel by their labels."""
    return min(practice.rod_bears_n(technique, rig.rod), practice.reel_bears_n(rig.reel, reference))


def dressed(rig: Rig, main: Line, technique: Technique, reference: Reference) -> Rig:
    """Return the rig with ``main`` on the reel and practice's leader, knots, backing and drag.

    What the person has pinned on the card stays as it is.
    """
    pinned = rig.pinned
    leader = rig.leader if "leader" in pinned else practice.leader_for(technique, main, reference)
    knot = rig.knots.lure if "knots" in pinned else practice.lure_knot_for(technique, leader or main)
    backing = rig.backing if "backing" in pinned else practice.backing_for(rig.reel.kind, main.type)
    usual_drag = practice.drag_for(technique, main, leader, most_n=tackle_bears_n(rig, technique, reference))
    drag = rig.drag_n if "drag" in pinned else usual_drag
    return rig.with_(
        main=main, leader=leader, knots=Knots(lure=knot, arbor=rig.knots.arbor), backing=backing, drag_n=drag
    )


def line_changes(rig: Rig, main: Line) -> Changes:
    """Return the changes of the card that put ``main`` on, and nothing else."""
    changes: Changes = {}
    if main.type is not rig.main.type:
        changes["main.type"] = str(main.type)
    changes["main.test"] = pounds(main.test_n or 0.0)
    for path in ("main.diameter", "main.measured.diameter", "main.measured.strength", "main.price"):
        if rig.says(path):
            changes[path] = None
    if rig.main.condition in (Condition.KINKED, Condition.WORN):
        changes["main.condition"] = str(Condition.FRESH)
    return changes


def dressing_changes(before: Rig, after: Rig) -> Changes:
    """Return the changes of the card that turn what hangs on one rig's line into another's."""
    changes: Changes = {}
    if after.leader != before.leader:
        changes |= leader_changes(after.leader)
    if after.knots.lure != before.knots.lure:
        changes["knots.lure"] = after.knots.lure
    if after.backing != before.backing:
        changes |= backing_changes(after.backing)
    if after.drag_n != before.drag_n and after.drag_n is not None:
        changes["drag"] = pounds(after.drag_n)
    return changes


def leader_changes(leader: Leader | None) -> Changes:
    """Return the changes of the card that tie this leader on, or take any leader off."""
    if leader is None:
        return {"leader": None}
    return {
        "leader.type": str(leader.type),
        "leader.test": pounds(leader.test_n or 0.0),
        "leader.diameter": None,
        "leader.length": inches(leader.length_m or 0.0),
        "leader.knot": leader.knot,
    }


def backing_changes(backing: Backing | None) -> Changes:
    """Return the changes of the card that put this backing on, or take any backing off."""
    if backing is None:
        return {"backing": None}
    return {
        "backing.type": str(backing.type),
        "backing.test": pounds(backing.test_n or 0.0),
        "backing.diameter": None,
        "backing.knot": backing.knot,
    }
