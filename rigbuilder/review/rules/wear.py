"""Rules about what has happened to the line: kinks, wear, age, and what the log tells."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.words import (
    Condition,
)
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, fresh_leader, fresh_line
from rigbuilder.review.rules.common import line_words
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension


def _kinked(case: Case) -> Hit | None:
    if case.main.condition is not Condition.KINKED:
        return None
    straight = case.facts.main_straight_n
    return Hit(
        Severity.FAULT,
        headline=lambda say: f"kinked {line_words(case, say)} line",
        detail=lambda say: f"At the kink it may hold only {say.forces(straight)}.",
        numbers=lambda: (Number.of("strength at the kink", straight, Dimension.FORCE, "drag"),),
    )


def _worn(case: Case) -> Hit | None:
    if case.main.condition is not Condition.WORN:
        return None
    straight = case.facts.main_straight_n
    return Hit(
        Severity.FAULT,
        headline=lambda say: f"worn {line_words(case, say)} line",
        detail=lambda say: f"What is left of it may hold {say.forces(straight)}.",
        numbers=lambda: (Number.of("strength left", straight, Dimension.FORCE, "drag"),),
    )


def _leader_gone(case: Case) -> Hit | None:
    leader = case.leader
    if leader is None or leader.condition not in (Condition.KINKED, Condition.WORN):
        return None
    return Hit(Severity.FAULT, headline=lambda say: f"{leader.condition} leader")


RULES = (
    Rule(
        name="line-kinked",
        part=Part.MAIN,
        severity=Severity.FAULT,
        what="The line has a kink in it.",
        why="Folding a line over on itself stretches its outside past what the material "
        "bears. The damage stays when the line looks straight again, and the next hard pull "
        "parts it there.",
        sources=(
            Source(Kind.COMPUTED, "a bend as tight as the line is thick strains its outside by about half"),
            COMMON_PRACTICE,
        ),
        check=_kinked,
        wrong=(Example("Texas rig", {"main.condition": "kinked"}),),
        right=(Example("Texas rig", {"main.condition": "fresh"}),),
        mends=(fresh_line, advice("Cut back above the kink and retie; never fish on with it")),
        replaces=("drag-above-weakest-link", "damage-not-cut-back", "line-past-its-time"),
        mistakes=("M01",),
    ),
    Rule(
        name="line-worn",
        part=Part.MAIN,
        severity=Severity.FAULT,
        what="The line is worn: dull, rough, nicked or left on too long.",
        why="Sun makes nylon brittle and every scrape starts a crack, so the line loses "
        "strength sooner than it looks worn. It goes at the worst spot, which no label "
        "tells.",
        sources=(COMMON_PRACTICE,),
        check=_worn,
        wrong=(Example("spinnerbait", {"main.condition": "worn"}),),
        right=(Example("spinnerbait", {"main.condition": "used"}),),
        mends=(fresh_line, advice("Cut back 3 to 10 ft, or strip the reel and fill it afresh")),
        replaces=("drag-above-weakest-link", "damage-not-cut-back", "line-past-its-time"),
        mistakes=("M01",),
    ),
    Rule(
        name="leader-worn",
        part=Part.LEADER,
        severity=Severity.FAULT,
        what="The leader is worn or kinked.",
        why="The leader takes the rock, the teeth and the hook; it wears first, and a nick "
        "or fold in it is the weakest spot of the whole rig.",
        sources=(COMMON_PRACTICE,),
        check=_leader_gone,
        wrong=(Example("drop shot", {"leader.condition": "worn"}),),
        right=(Example("drop shot", {"leader.condition": "fresh"}),),
        mends=(fresh_leader,),
        replaces=("drag-above-weakest-link", "leader-used-up"),
        mistakes=("M01",),
    ),
)
