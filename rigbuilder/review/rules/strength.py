"""Rules about the strength of the main line against practice."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.review.case import Case
from rigbuilder.review.conditions import Bounds, Move
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import at_aim, other_line, other_test
from rigbuilder.review.speak import Speaker, an
from rigbuilder.sources import COMMON_PRACTICE
from rigbuilder.units.dimensions import Dimension

_FAR = 2  # steps of the trade's ladder: one is a shade, two are another line
_HALF = 0.5  # common practice: below half the lightest usual test the rig is for another job
# Common practice: on the coarse rungs of light line a single step may be as much as this.
_WELL_BELOW, _WELL_ABOVE = 0.62, 1.6


def _bounds(case: Case) -> Bounds | None:
    return case.aim.for_type(case.main.type)


def _numbers(case: Case, bounds: Bounds) -> tuple[Number, ...]:
    low, aim, high = (value * LBF_N for value in (bounds.low_lb, bounds.aim_lb, bounds.high_lb))
    return (
        Number.of("test", case.main_n, Dimension.FORCE, "test"),
        Number("tests that suit", low, aim, high, Dimension.FORCE, "test"),
    )


def _span_words(bounds: Bounds, say: Speaker) -> str:
    return say.span(bounds.low_lb * LBF_N, bounds.high_lb * LBF_N, Dimension.FORCE, "test")


def _moved_by(moves: tuple[Move, ...], way: str) -> str:
    names = [move.state.name for move in moves]
    if not names:
        return ""
    listed = names[0] if len(names) == 1 else ", ".join(names[:-1]) + " and " + names[-1]
    return f"What moves it {way} today: {listed}."


def _below(case: Case) -> Hit | None:
    bounds = _bounds(case)
    if bounds is None or not case.main_n:
        return None
    test_lb = case.main_reach_n.high / LBF_N
    if bounds.steps_below(test_lb) == 0:
        return None
    steps = bounds.steps_below_base(test_lb)
    return Hit(
        _severity(
            steps, beyond=test_lb < _HALF * bounds.base.low, well=test_lb < _WELL_BELOW * bounds.base.low
        ),
        headline=lambda say: (
            f"{case.main.type} {say.test(case.main_n)} is below the "
            f"{_span_words(bounds, say)} for {an(case.technique.name)}"
        ),
        detail=lambda say: _moved_low(case, bounds),
        numbers=lambda: _numbers(case, bounds),
    )


def _moved_low(case: Case, bounds: Bounds) -> str:
    """Return in words which conditions moved the lower end of the range."""
    if bounds.low_lb < bounds.base.low:
        return _moved_by(case.aim.movers(case.main.type, up=False), "down")
    return _moved_by(case.aim.movers(case.main.type, up=True), "up")


def _above(case: Case) -> Hit | None:
    bounds = _bounds(case)
    if bounds is None:
        return None
    test_lb = case.main_reach_n.low / LBF_N
    steps = bounds.steps_above(test_lb)
    if steps == 0:
        return None
    return Hit(
        _severity(steps, beyond=False, well=test_lb > _WELL_ABOVE * bounds.base.high),
        headline=lambda say: (
            f"{case.main.type} {say.test(case.main_n)} is above the "
            f"{_span_words(bounds, say)} for {an(case.technique.name)}"
        ),
        detail=lambda say: _moved_by(case.aim.movers(case.main.type, up=False), "down"),
        numbers=lambda: _numbers(case, bounds),
    )


def _severity(steps: int, *, beyond: bool, well: bool) -> Severity:
    if beyond:
        return Severity.FAULT
    return Severity.RISK if well or steps >= _FAR else Severity.NOTE


def _off_aim(case: Case) -> Hit | None:
    bounds = _bounds(case)
    if bounds is None:
        return None
    test_lb = case.main_reach_n.clamp(bounds.aim_lb * LBF_N) / LBF_N
    if bounds.steps_below(test_lb) or bounds.steps_above(test_lb):
        return None
    away = bounds.steps_from_aim(test_lb)
    if abs(away) < _FAR:
        return None
    way = "lighter" if away < 0 else "heavier"
    return Hit(
        Severity.NOTE,
        headline=lambda say: (
            f"{say.test(case.main_n)} is {way} than the {say.test(bounds.aim_lb * LBF_N)} to aim at today"
        ),
        detail=lambda say: _moved_by(
            case.aim.movers(case.main.type, up=away < 0), "up" if away < 0 else "down"
        ),
        numbers=lambda: _numbers(case, bounds),
    )


def _in_practice(case: Case, say: Speaker) -> str:
    bounds = _bounds(case)
    if bounds is None or not bounds.low_lb - 0.05 <= case.main_n / LBF_N <= bounds.high_lb + 0.05:
        return ""
    return f"{say.test(case.main_n)} is inside the {_span_words(bounds, say)} for {an(case.technique.name)}"


RULES = (
    Rule(
        name="test-below-practice",
        part=Part.MAIN,
        severity=Severity.FAULT,
        what="The main line is lighter than practice uses for the technique in these conditions.",
        why="The range is what anglers have found to land such fish out of such water. Below "
        "it, the strike and the fish near cover come closer to the breaking load than any "
        "drag setting can make good.",
        sources=(COMMON_PRACTICE,),
        check=_below,
        reads="lines",
        wrong=(
            Example(
                "flipping jig",
                {
                    "main.type": "fluorocarbon",
                    "main.test": "10 lb",
                    "rod.label": None,
                    "rod.line": "10-25 lb",
                    "rod.power": "heavy",
                    "rod.action": "fast",
                },
            ),
        ),
        right=(Example("flipping jig", {"main.type": "fluorocarbon", "main.test": "17 lb"}),),
        mends=(other_test, other_line),
    ),
    Rule(
        name="test-above-practice",
        part=Part.MAIN,
        severity=Severity.RISK,
        what="The main line is heavier than practice uses for the technique in these conditions.",
        why="Heavier line is thicker and stiffer. It holds the lure up in the water, takes "
        "its movement, shortens the cast and is easier to see, without landing a fish that "
        "the lighter line would lose.",
        sources=(COMMON_PRACTICE,),
        check=_above,
        reads="lines",
        wrong=(
            Example(
                "square-bill crankbait",
                {
                    "main.type": "fluorocarbon",
                    "main.test": "25 lb",
                    "rod.label": None,
                    "rod.line": "10-25 lb",
                    "rod.power": "medium heavy",
                    "rod.action": "moderate",
                },
            ),
        ),
        right=(Example("square-bill crankbait", {"main.type": "fluorocarbon", "main.test": "14 lb"}),),
        mends=(other_test, other_line),
    ),
    Rule(
        name="test-off-the-aim",
        part=Part.MAIN,
        severity=Severity.NOTE,
        what="The test suits the technique but lies two steps or more from where today's conditions point.",
        why="Inside the range lighter is for small fish, open water, hard-fished fish and a "
        "faster fall; heavier for big fish, cover and heavy lures.",
        sources=(COMMON_PRACTICE,),
        check=_off_aim,
        reads="lines",
        wrong=(
            Example(
                "flipping jig", {"main.type": "fluorocarbon", "main.test": "14 lb", "fish.weight": "4 kg"}
            ),
        ),
        right=(Example("flipping jig"),),
        mends=(at_aim,),
        settled=_in_practice,
    ),
)
