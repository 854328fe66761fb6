"""Rules about the kind of line, against the lure, the cover and the water."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.words import (
    Cover,
    LineType,
    Presentation,
    Rank,
    RetrieveLoad,
)
from rigbuilder.review.case import Case
from rigbuilder.review.conditions import usual_conditions
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import other_line, with_leader
from rigbuilder.review.rules.common import line_words
from rigbuilder.review.speak import Speaker, an
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

CUTTING_GRASS = (Cover.THICK_GRASS, Cover.MATTED_GRASS, Cover.LILY_PADS)
_HARD = (Cover.WOOD, Cover.DOCKS)
_MAT_N = 25 * LBF_N  # common practice: now and then fluorocarbon, from 25 lb, is punched through mats
_LONG_LEADER_M = 1.2  # common practice: four feet of leader keep braid off the wood
_VERY_CLEAR_M = 2.44  # common practice: clear to more than 8 ft
_DENSITY = Source(Kind.COMPUTED, "weight of wetted line from diameter and the densities of line and water")


def _sinks(kind: LineType) -> bool:
    return kind in (LineType.FLUOROCARBON, LineType.LEAD_CORE)


def _surface(case: Case) -> Hit | None:
    if not _sinks(case.main.type) or not _is_worked_on_top(case) or _house_lets_it_pass(case):
        return None
    pull = case.facts.nose_pull_n
    return Hit(
        Severity.FAULT,
        headline=lambda say: f"sinking {line_words(case, say)} on a lure that works on the surface",
        detail=lambda say: (
            ""
            if pull is None
            else f"At rest the wetted line hangs on the nose with about {pull.typical / 0.00981:.1f} g: "
            "little, yet it never lets go."
        ),
        numbers=lambda: (
            () if pull is None else (Number.of("pull on the nose", pull, Dimension.FORCE, "nose"),)
        ),
        sources=() if pull is None else (_DENSITY,),
    )


def _house_lets_it_pass(case: Case) -> bool:
    """Tell whether the coach takes the side that lets fluorocarbon pass on lures which never rest."""
    if case.shipped or case.technique.retrieve_load != (RetrieveLoad.STEADY,):
        return False
    return "fluorocarbon-when-moving" in case.house.choice("surface-line", case.reference)


def _is_worked_on_top(case: Case) -> bool:
    return case.technique.is_surface or case.rig.presentation is Presentation.FLOATING


def _wrong_type(case: Case) -> Hit | None:
    line = case.practice
    rank = Rank.NEVER if line is None else line.rank
    if rank not in (Rank.NEVER, Rank.POOR):
        return None
    reason = "" if line is None else line.reason
    return Hit(
        Severity.FAULT if rank is Rank.NEVER else Severity.RISK,
        headline=lambda say: f"{case.main.type} for {an(case.technique.name)}: practice says {rank}",
        detail=lambda say: _sentence(reason),
    )


def _sentence(text: str) -> str:
    text = text.strip()
    return text[:1].upper() + text[1:].rstrip(".") + "." if text else ""


def _right_type(case: Case, say: Speaker) -> str:
    line = case.practice
    if line is None or line.rank not in (Rank.FIRST_CHOICE, Rank.WORKS):
        return ""
    return f"{case.main.type} is {_rank_words(line.rank)} for the {case.technique.name}"


def _rank_words(rank: Rank) -> str:
    return "the first choice" if rank is Rank.FIRST_CHOICE else "a line that works"


def _practice_knows_of_it(case: Case) -> bool:
    """Tell whether the technique's own rank of the line, in this test, was given with such weed in mind."""
    span = None if case.practice is None else case.practice.test_n
    usual = usual_conditions(case.technique.id).get("water.cover")
    return usual in CUTTING_GRASS and span is not None and case.main_n >= span.low * 0.999


def _soft_in_grass(case: Case) -> Hit | None:
    cover = case.rig.water.cover
    if cover not in CUTTING_GRASS or case.is_braided() or case.is_type(LineType.WIRE, LineType.LEAD_CORE):
        return None
    stiff = case.is_type(LineType.FLUOROCARBON) and (case.main_n >= _MAT_N * 0.999)
    return Hit(
        Severity.FAULT if cover is Cover.MATTED_GRASS and not stiff else Severity.RISK,
        headline=lambda say: f"{line_words(case, say)} in {cover}",
    )


def _braid_in_wood(case: Case) -> Hit | None:
    cover = case.rig.water.cover
    if cover not in _HARD or not case.is_braided():
        return None
    leader = case.leader
    if leader is not None and leader.length_m is not None and leader.length_m >= _LONG_LEADER_M:
        return None
    if not case.shipped and "braid" in case.house.choice("wood-line", case.reference):
        return None
    return Hit(Severity.NOTE, headline=lambda say: f"{line_words(case, say)} around {cover}")


def _bare_braid_clear(case: Case) -> Hit | None:
    water = case.rig.water
    if not case.is_braided() or case.leader is not None or _is_worked_on_top(case):
        return None
    clarity, cover = water.clarity_m, water.cover
    if cover in CUTTING_GRASS:
        return None
    clear = clarity is not None and clarity > _VERY_CLEAR_M
    pressed = water.pressure is not None and water.pressure.value == "high"
    if not clear and not (pressed and clarity is not None and clarity > _VERY_CLEAR_M / 2):
        return None
    slow = case.technique.retrieve_load != (RetrieveLoad.STEADY,)
    if not slow and "moving" in case.house.choice("braid-clear-water", case.reference):
        return None
    return Hit(
        Severity.RISK if clear and slow else Severity.NOTE,
        headline=lambda say: (
            "braid straight to the lure, "
            + (f"water clear to {say.depth(clarity or 0.0)}" if clear else "fish that see much tackle")
        ),
    )


RULES = (
    Rule(
        name="sinking-line-on-surface-lure",
        part=Part.MAIN,
        severity=Severity.FAULT,
        what="A line that sinks is the main line of a lure that is worked on the surface.",
        why="The line between rod and lure goes under whenever it is slack. It then pulls "
        "the nose down and along a path below the surface, and the lure no longer sits, walks "
        "or spits as it should. Nylon hardly sinks; braid floats. Some anglers throw lures that "
        "never rest on it all the same.",
        sources=(COMMON_PRACTICE,),
        check=_surface,
        differ="surface-line",
        wrong=(
            Example("walking bait", {"main.type": "fluorocarbon", "main.test": "15 lb", "leader": None}),
            Example("buzzbait", {"main.type": "fluorocarbon", "main.test": "17 lb"}),
        ),
        right=(Example("walking bait"), Example("buzzbait")),
        mends=(other_line,),
        replaces=(
            "line-wrong-for-technique",
            "line-cannot-cut-grass",
            "test-below-practice",
            "test-above-practice",
            "leader-sinks-surface-lure",
        ),
        mistakes=("M18",),
    ),
    Rule(
        name="line-wrong-for-technique",
        part=Part.MAIN,
        severity=Severity.FAULT,
        what="Practice ranks this type of line never or poor for the technique.",
        why="Each technique asks something of its line: to float or to sink, to give or to "
        "hold, to cut or to slide. A line that does the opposite works against the lure on "
        "every cast.",
        sources=(COMMON_PRACTICE,),
        check=_wrong_type,
        reads="lines",
        wrong=(
            Example("hollow-body frog", {"main.type": "nylon", "main.test": "20 lb", "water.cover": "open"}),
            Example("drop shot", {"main.type": "nylon", "main.test": "8 lb", "leader": None}),
        ),
        right=(Example("hollow-body frog"), Example("drop shot")),
        mends=(other_line,),
        replaces=("line-stretches-too-far-out", "test-below-practice", "test-above-practice"),
        settled=_right_type,
    ),
    Rule(
        name="line-cannot-cut-grass",
        part=Part.MAIN,
        severity=Severity.FAULT,
        what="A smooth, stretching line is fished in thick or matted grass or in lily pads.",
        why="Round, smooth line rides over stems instead of cutting them, and it gives while "
        "the fish digs in. Braid saws through soft stalks and lifts fish and weed together.",
        sources=(COMMON_PRACTICE,),
        check=_soft_in_grass,
        rests_on=("water.cover",),
        wrong=(
            Example(
                "Texas rig in cover",
                {"water.cover": "matted grass", "main.type": "fluorocarbon", "main.test": "20 lb"},
            ),
        ),
        right=(
            Example(
                "Texas rig in cover",
                {"water.cover": "wood", "main.type": "fluorocarbon", "main.test": "20 lb"},
            ),
        ),
        mends=(other_line,),
        replaces=("line-wrong-for-technique", "test-below-practice", "line-stretches-too-far-out"),
        mistakes=("M20",),
    ),
    Rule(
        name="braid-in-wood",
        part=Part.MAIN,
        severity=Severity.NOTE,
        what="Braid is fished round wood or docks without a long tough leader.",
        why="Under load thin braid saws into bark and planks and sticks there; a smooth strand "
        "slides over them. Some anglers accept that for the strength of braid.",
        sources=(COMMON_PRACTICE,),
        check=_braid_in_wood,
        differ="wood-line",
        wrong=(
            Example(
                "Texas rig in cover", {"water.cover": "wood", "main.type": "braid", "main.test": "50 lb"}
            ),
        ),
        right=(
            Example(
                "Texas rig in cover",
                {"water.cover": "wood", "main.type": "fluorocarbon", "main.test": "17 lb"},
            ),
        ),
        mends=(other_line,),
        replaces=("line-wrong-for-technique",),
    ),
    Rule(
        name="bare-braid-in-clear-water",
        part=Part.MAIN,
        severity=Severity.RISK,
        what="Braid runs straight to the lure in very clear water or in front of fish that are fished hard.",
        why="Braid cannot be seen through, and on a slow or still lure the fish has time to "
        "look at it. A clear leader takes it out of sight of the lure.",
        sources=(COMMON_PRACTICE,),
        check=_bare_braid_clear,
        rests_on=("water.clarity", "leader.type"),
        differ="braid-clear-water",
        wrong=(Example("Ned rig", {"leader": None, "water.clarity": "3 m", "knots.lure": "double palomar"}),),
        right=(Example("Ned rig", {"water.clarity": "3 m"}),),
        mends=(with_leader,),
        replaces=("leader-missing",),
    ),
)
