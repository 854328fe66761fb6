"""Rules about the lure against the rod that throws it."""

from rigbuilder.model.fields import Part
from rigbuilder.reference.ranges import LBF_N, OZ_KG
from rigbuilder.reference.words import LineType
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.mends import advice, other_leader_test, other_line, other_test
from rigbuilder.review.rules.common import rests_on_leader
from rigbuilder.review.speak import Speaker
from rigbuilder.review.tackle_mends import usual_rod, usual_weight
from rigbuilder.sources import COMMON_PRACTICE
from rigbuilder.units.dimensions import Dimension

_SLACK = 1.02  # labels round: a lure within 2 % of the printed limit counts as inside


def _numbers(case: Case) -> tuple[Number, ...]:
    span = case.rig.rod.lure_kg
    assert span is not None  # noqa: S101 - only called after the check has seen it
    return (
        Number.of("lure in all", case.rig.lure.total_kg, Dimension.MASS, "lure"),
        Number.between("rod's lure range", span, Dimension.MASS, "lure"),
    )


def _heavier(case: Case) -> Hit | None:
    span, total = case.rig.rod.lure_kg, case.rig.lure.total_kg
    if span is None or total <= span.high * _SLACK:
        return None
    return Hit(
        Severity.FAULT,
        headline=lambda say: f"{say.lure(total)} lure on a rod marked {say.lures(span)}",
        detail=lambda say: _parts(case, say),
        numbers=lambda: _numbers(case),
    )


def _parts(case: Case, say: Speaker) -> str:
    lure = case.rig.lure
    extra = [
        f"{word} {say.lure(mass)}"
        for word, mass in (("trailer", lure.trailer_kg), ("sinker", lure.sinker_kg))
        if mass
    ]
    return f"With {' and '.join(extra)} it is {say.lure(lure.total_kg)} in all." if extra else ""


def _lighter(case: Case) -> Hit | None:
    span, total = case.rig.rod.lure_kg, case.rig.lure.total_kg
    if span is None or total * _SLACK >= span.low:
        return None
    return Hit(
        Severity.NOTE,
        headline=lambda say: f"{say.lure(total)} lure on a rod marked {say.lures(span)}",
        numbers=lambda: _numbers(case),
    )


def _in_range(case: Case, say: Speaker) -> str:
    span, total = case.rig.rod.lure_kg, case.rig.lure.total_kg
    if span is None or not span.low <= total * _SLACK or total > span.high * _SLACK:
        return ""
    return f"{say.lure(total)} lure is inside the rod's {say.lures(span)}"


def _cracks_off(case: Case) -> Hit | None:
    limits, total = case.reference.drag.limits, case.rig.lure.total_kg
    if total <= limits.cast_shock_warn_oz * OZ_KG * 1.001 or case.is_type(LineType.LEAD_CORE):
        return None
    least = limits.cast_shock_lb_per_oz.low * LBF_N * total / OZ_KG
    weakest = case.weakest_label_n
    if weakest >= least * 0.999:
        return None
    aim = case.aim.for_type(case.main.type)
    usual = aim is not None and case.main_n / LBF_N >= aim.base.low - 0.05
    usual = usual and total <= case.technique.lure_kg.high * _SLACK
    return Hit(
        Severity.NOTE if usual else Severity.FAULT,
        headline=lambda say: f"{say.lure(total)} cast on {say.test(weakest)} line: it cracks off",
        detail=lambda say: f"A hard cast of this weight wants {say.test(least)} at the least.",
        numbers=lambda: (
            Number.of("weakest label", weakest, Dimension.FORCE, "test"),
            Number.of("least for a hard cast", least, Dimension.FORCE, "test"),
        ),
        rests_on=rests_on_leader(case) if case.main_n >= least else (),
    )


RULES = (
    Rule(
        name="lure-cracks-off",
        part=Part.MAIN,
        severity=Severity.FAULT,
        what="A heavy lure is cast on less than six pounds of line for each ounce.",
        why="On a hard cast the line has to swing the whole weight, and to stop it when the "
        "spool checks. Line too thin for that parts in mid-air, and the lure flies on alone, "
        "at the height of people's heads.",
        sources=(COMMON_PRACTICE,),
        check=_cracks_off,
        wrong=(Example("glide bait", {"lure.weight": "2 oz", "main.test": "10 lb", "drag": "2 lb"}),),
        right=(Example("glide bait", {"lure.weight": "2 oz", "main.test": "20 lb"}),),
        mends=(other_test, other_leader_test, other_line, advice("Lob it gently, with nobody near the path")),
        replaces=("test-below-practice", "line-stretches-too-far-out"),
        mistakes=("M41",),
    ),
    Rule(
        name="lure-heavier-than-rod",
        part=Part.LURE,
        severity=Severity.FAULT,
        what="The lure with trailer, hooks and sinker weighs more than the rod's lure range allows.",
        why="Casting throws the whole weight against the blank at once. Past the printed top "
        "the thin tip section folds instead of driving the lure, and a hard cast can snap "
        "it.",
        sources=(COMMON_PRACTICE,),
        check=_heavier,
        wrong=(Example("spinnerbait", {"rod.lure": "1/8-1/4 oz", "lure.weight": "1/2 oz"}),),
        right=(Example("spinnerbait", {"rod.lure": "1/4-3/4 oz", "lure.weight": "1/2 oz"}),),
        mends=(usual_rod, usual_weight, advice("Take a rod with a heavier lure range, or lob it")),
        mistakes=("M23",),
        settled=_in_range,
    ),
    Rule(
        name="lure-lighter-than-rod",
        part=Part.LURE,
        severity=Severity.NOTE,
        what="The lure with everything on it weighs less than the rod's lure range begins with.",
        why="A rod throws by bending under the lure and springing back. Too little weight "
        "does not bend it, so the cast stays short and a casting reel's spool runs faster "
        "than the line leaves it.",
        sources=(COMMON_PRACTICE,),
        check=_lighter,
        wrong=(Example("spinnerbait", {"rod.lure": "3/4-2 oz", "lure.weight": "1/2 oz"}),),
        right=(Example("spinnerbait", {"rod.lure": "1/4-3/4 oz", "lure.weight": "1/2 oz"}),),
        mends=(usual_rod, usual_weight, advice("For very light lures take spinning tackle")),
        mistakes=("M24",),
    ),
)
