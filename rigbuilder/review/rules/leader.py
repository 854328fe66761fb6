"""Rules about the strength of the leader."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.words import (
    FishTeeth,
    LeaderNeed,
    LineType,
    RetrieveLoad,
)
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import (
    other_leader_test,
    without_leader,
)
from rigbuilder.review.rules.common import leader_n, resists_teeth
from rigbuilder.sources import COMMON_PRACTICE
from rigbuilder.units.dimensions import Dimension


def _stronger(case: Case) -> Hit | None:
    leader = case.leader
    if leader is None or case.is_braided() or case.technique.leader.stronger_than_main:
        return None
    toothed = case.rig.fish.teeth is FishTeeth.PRESENT and resists_teeth(case)
    if toothed or leader.type is LineType.WIRE or leader_n(case) <= case.main_n * 1.001:
        return None
    return Hit(
        Severity.FAULT,
        headline=lambda say: f"{say.test(leader_n(case))} leader on {say.test(case.main_n)} {case.main.type}",
        numbers=lambda: _tests(case),
    )


def _tests(case: Case) -> tuple[Number, ...]:
    return (
        Number.of("leader", leader_n(case), Dimension.FORCE, "test"),
        Number.of("main line", case.main_n, Dimension.FORCE, "test"),
    )


def _stronger_than_braid(case: Case) -> Hit | None:
    leader = case.leader
    if leader is None or not case.is_braided() or case.technique.leader.stronger_than_main:
        return None
    if leader.type is LineType.WIRE or resists_teeth(case) or leader_n(case) <= case.main_n * 1.25:
        return None
    usual = case.technique.leader.test_n
    if usual is not None and leader_n(case) <= usual.high * 1.001:
        return None
    return Hit(
        Severity.RISK,
        headline=lambda say: f"{say.test(leader_n(case))} leader on {say.test(case.main_n)} braid",
        numbers=lambda: _tests(case),
    )


def _as_strong_below_sinker(case: Case) -> Hit | None:
    leader = case.leader
    if leader is None or case.technique.leader.need is not LeaderNeed.REQUIRED or case.is_braided():
        return None
    if RetrieveLoad.DRAG not in case.technique.retrieve_load or case.technique.toothed:
        return None
    if not case.main_n * 0.999 <= leader_n(case) <= case.main_n * 1.001:
        return None
    return Hit(
        Severity.RISK,
        headline=lambda say: f"leader and main line are both {say.test(case.main_n)}",
        numbers=lambda: _tests(case),
    )


def _outside_practice(case: Case) -> Hit | None:
    leader, usual = case.leader, case.technique.leader.test_n
    if leader is None or usual is None or leader.type is LineType.WIRE or resists_teeth(case):
        return None
    test = leader_n(case)
    if usual.low * 0.66 <= test <= usual.high * 1.5:
        return None
    way = "lighter" if test < usual.low else "heavier"
    return Hit(
        Severity.RISK,
        headline=lambda say: f"{say.test(test)} leader is {way} than the {say.tests(usual)} of practice",
        numbers=lambda: (
            Number.of("leader", test, Dimension.FORCE, "test"),
            Number.between("leaders of practice", usual, Dimension.FORCE, "test"),
        ),
    )


RULES = (
    Rule(
        name="leader-stronger-than-main",
        part=Part.LEADER,
        severity=Severity.FAULT,
        what="The leader is stronger than the smooth main line that it hangs on, with no teeth to need it.",
        why="A rig breaks where it is weakest. With the stronger line at the lure end that "
        "is the joint or the main line above it, and the fish swims off trailing all of it.",
        sources=(COMMON_PRACTICE,),
        check=_stronger,
        rests_on=("leader.test",),
        wrong=(Example("Carolina rig", {"leader.test": "25 lb"}),),
        right=(Example("Carolina rig"),),
        mends=(other_leader_test, without_leader),
        replaces=("leader-outside-practice",),
        mistakes=("M27",),
    ),
    Rule(
        name="leader-outgrows-braid",
        part=Part.LEADER,
        severity=Severity.RISK,
        what="The leader is marked well above the braid it hangs on, and above what the technique uses.",
        why="The fuse belongs at the lure. When the leader outlasts the braid a snag costs "
        "the whole main line, and a thick stiff leader knots badly to a thin braid.",
        sources=(COMMON_PRACTICE,),
        check=_stronger_than_braid,
        rests_on=("leader.test",),
        wrong=(Example("drop shot", {"leader.test": "25 lb"}),),
        right=(Example("drop shot"),),
        mends=(other_leader_test,),
        replaces=("leader-outside-practice",),
    ),
    Rule(
        name="leader-as-strong-as-main",
        part=Part.LEADER,
        severity=Severity.RISK,
        what="On a rig dragged over the bottom the leader is as strong as the main line.",
        why="The leader is what meets the snags. If it is no weaker, a snag may take the "
        "sinker, the swivel and the line above instead of just the hook.",
        sources=(COMMON_PRACTICE,),
        check=_as_strong_below_sinker,
        rests_on=("leader.test",),
        wrong=(Example("Carolina rig", {"main.test": "17 lb", "leader.test": "17 lb"}),),
        right=(Example("Carolina rig"),),
        mends=(other_leader_test,),
        mistakes=("M33",),
    ),
    Rule(
        name="leader-outside-practice",
        part=Part.LEADER,
        severity=Severity.RISK,
        what="The leader is far lighter or far heavier than practice uses for the technique.",
        why="The leader is meant to be the fuse and to let the lure move. Far too light it "
        "parts on the strike; far too heavy it stiffens the lure and moves the weak spot up "
        "the line.",
        sources=(COMMON_PRACTICE,),
        check=_outside_practice,
        rests_on=("leader.test",),
        reads="leader",
        wrong=(Example("drop shot", {"leader.test": "2 lb", "drag": "0.4 lb"}),),
        right=(Example("drop shot", {"leader.test": "8 lb"}),),
        mends=(other_leader_test,),
    ),
)
