"""Rules about the drag: what the chain, the hooks and the rod bear."""

from rigbuilder.model.fields import Part
from rigbuilder.model.practice import ROD_SHARE, reel_bears_n, rod_bears_n
from rigbuilder.reference.words import HookClass
from rigbuilder.review.case import Case
from rigbuilder.review.core import Example, Hit, Number, Rule, Severity
from rigbuilder.review.facts import Link
from rigbuilder.review.mends import advice, usual_drag
from rigbuilder.review.rules.common import rests_on_leader
from rigbuilder.review.speak import Speaker
from rigbuilder.review.tackle_mends import usual_reel
from rigbuilder.sources import COMMON_PRACTICE, Kind, Source
from rigbuilder.units.dimensions import Dimension

_CHAIN = Source(Kind.COMPUTED, "weakest of label × true strength × wetness × knot over all links, as chances")
_FIFTH = 0.22  # common practice: a fifth, and what a scale read by hand adds
_THIRD = 1 / 3  # common practice: a third of the weakest label at most, unless the technique locks up
_WELL_INSIDE = 0.7  # of what the whole chain surely bears; no single link bears less than that
_LOCKED_SHARE = 0.4  # common practice: two fifths of the weakest label where the drag is all but locked
_TIGHT, _LOOSE = 1.5, 0.6  # common practice: from these shares of the usual drag the setting was guessed


def _line_links(case: Case) -> tuple[Link, ...]:
    """Return the links that are line, knot or hardware; hooks are judged by a rule of their own."""
    return tuple(link for link in case.facts.links if link.part is not Part.LURE)


def _weakest(case: Case) -> Link:
    return min(_line_links(case), key=lambda link: link.strength_n.low)


def _numbers(case: Case, link: Link) -> tuple[Number, ...]:
    return (
        Number.of("drag", case.rig.drag_n or 0.0, Dimension.FORCE, "drag"),
        Number.of(f"{link.name} bears", link.strength_n, Dimension.FORCE, "drag"),
    )


def _above_chain(case: Case) -> Hit | None:
    drag = case.rig.drag_n
    if drag is None:
        return None
    if drag < _WELL_INSIDE * case.facts.chain_n.low:
        return None
    link = _weakest(case)
    if drag < link.strength_n.low:
        return None
    return Hit(
        Severity.FAULT,
        headline=lambda say: (
            f"drag of {say.force(drag)}, and the {link.name} bears {say.forces(link.strength_n)}"
        ),
        numbers=lambda: _numbers(case, link),
        rests_on=rests_on_leader(case) if drag < case.facts.main_straight_n.low else (),
    )


def _opens_hooks(case: Case) -> Hit | None:
    drag, opens = case.rig.drag_n, case.reference.hooks[case.hook].opens_n
    if drag is None or drag < opens.typical:
        return None
    return Hit(
        Severity.RISK,
        headline=lambda say: f"drag of {say.force(drag)} opens {case.hook} hooks at {say.forces(opens)}",
        numbers=lambda: (
            Number.of("drag", drag, Dimension.FORCE, "drag"),
            Number.of("hook opens at", opens, Dimension.FORCE, "drag"),
        ),
        part=Part.DRAG,
    )


def _least_share(case: Case) -> float:
    """Return the share of the weakest label up to which nothing is said: a third, or as the coach has it."""
    if case.shipped:
        return _THIRD
    if "drag" in case.house.overrides(case.reference, case.technique):
        return 0.0
    return _FIFTH if case.house.choice("drag-share", case.reference) == ("fifth",) else _THIRD


def _above_practice(case: Case) -> Hit | None:
    drag, practice = case.rig.drag_n, case.technique.drag
    if drag is None:
        return None
    share = drag / case.weakest_label_n if case.weakest_label_n else 0.0
    least = _least_share(case)
    if practice.percent is None:
        limit, tight = practice.drag_n.high, drag > practice.drag_n.high * 1.05
        note = False
    else:
        limit = practice.percent.high / 100 * case.weakest_label_n
        tight = drag > max(limit * 1.25, practice.drag_n.high * 1.05) and share > least
        note = not tight and drag > limit * 1.02 and share > least * 1.02
    if not tight and not note:
        return None
    return Hit(
        Severity.RISK if tight else Severity.NOTE,
        headline=lambda say: (
            f"drag of {say.force(drag)} is {share * 100:.0f} % of the weakest "
            f"{say.test(case.weakest_label_n)} label"
        ),
        detail=lambda say: f"Practice sets about {say.force(min(limit, practice.drag_n.high))} at most here.",
        numbers=lambda: _numbers(case, _weakest(case)),
        rests_on=rests_on_leader(case),
    )


def _loose(case: Case) -> Hit | None:
    drag, practice = case.rig.drag_n, case.technique.drag
    if drag is None:
        return None
    share = _LOCKED_SHARE if practice.percent is None else practice.percent.low / 100
    least = min(practice.drag_n.low, share * case.weakest_label_n)
    if drag >= _LOOSE * least * 0.999:
        return None
    heavy = case.hook in (HookClass.HEAVY_SINGLE, HookClass.WEEDLESS_DOUBLE)
    return Hit(
        Severity.RISK if heavy or drag < least / 3 else Severity.NOTE,
        headline=lambda say: f"drag of {say.force(drag)} where practice sets {say.force(least)} and more",
        numbers=lambda: (
            Number.of("drag", drag, Dimension.FORCE, "drag"),
            Number(
                "usual drag", least, practice.drag_n.middle, practice.drag_n.high, Dimension.FORCE, "drag"
            ),
        ),
    )


def _above_rod(case: Case) -> Hit | None:
    drag, rod = case.rig.drag_n, case.rig.rod
    if drag is None or rod.line_n is None or rod.line_for_braid:
        return None
    limit = ROD_SHARE * rod.line_n.high
    if drag <= rod_bears_n(case.technique, rod) * 1.01:
        return None
    return Hit(
        Severity.RISK,
        headline=lambda say: (
            f"drag of {say.force(drag)} on a rod marked up to {say.test(rod.line_n.high)}"
            if rod.line_n
            else ""
        ),
        numbers=lambda: (
            Number.of("drag", drag, Dimension.FORCE, "drag"),
            Number.of("half the rod's top label", limit, Dimension.FORCE, "drag"),
        ),
    )


def _above_reel(case: Case) -> Hit | None:
    drag, most = case.rig.drag_n, case.rig.reel.drag_n
    if drag is None or most is None:
        return None
    if drag <= reel_bears_n(case.rig.reel, case.reference) * 1.001:
        return None
    return Hit(
        Severity.RISK if drag > most * 1.001 else Severity.NOTE,
        headline=lambda say: f"drag of {say.force(drag)} on a reel marked {say.force(most)} at most",
        numbers=lambda: (
            Number.of("drag", drag, Dimension.FORCE, "drag"),
            Number.of("reel's most", most, Dimension.FORCE, "drag"),
        ),
    )


def _in_order(case: Case, say: Speaker) -> str:
    drag = case.rig.drag_n
    if drag is None or not case.weakest_label_n or _loose(case) or _above_practice(case):
        return ""
    return f"drag of {say.force(drag)} is {drag / case.weakest_label_n * 100:.0f} % of the weakest label"


RULES = (
    Rule(
        name="drag-above-weakest-link",
        part=Part.DRAG,
        severity=Severity.FAULT,
        what="The drag is set higher than the weakest link of the rig surely bears.",
        why="A drag protects the line only by slipping first. Set above what a knot, leader "
        "or hook holds, it never slips before something gives.",
        sources=(_CHAIN,),
        check=_above_chain,
        rests_on=("drag",),
        wrong=(Example("drop shot", {"drag": "8 lb"}),),
        right=(Example("drop shot", {"drag": "2 lb"}),),
        mends=(usual_drag,),
        replaces=("drag-above-practice", "drag-strains-rod", "drag-opens-hooks"),
        mistakes=("M05", "M06"),
        settled=_in_order,
    ),
    Rule(
        name="drag-opens-hooks",
        part=Part.DRAG,
        severity=Severity.RISK,
        what="The drag is set so high that it opens the hooks the technique is fished with.",
        why="Thin wire bends before line breaks. A drag above what straightens the hook lets "
        "a good fish pull itself free.",
        sources=(Source(Kind.MEMORY, "what hooks bear is a trade impression: try your own on a scale"),),
        check=_opens_hooks,
        rests_on=("drag",),
        wrong=(
            Example(
                "suspending jerkbait",
                {"main.test": "14 lb", "rod.label": None, "rod.line": "8-15 lb", "drag": "10 lb"},
            ),
        ),
        right=(Example("suspending jerkbait"),),
        mends=(usual_drag,),
        replaces=("drag-above-practice",),
    ),
    Rule(
        name="drag-above-practice",
        part=Part.DRAG,
        severity=Severity.RISK,
        what="The drag takes a larger share of the weakest label than practice sets for the technique.",
        why="A label is a straight pull on fresh dry line. Knots, water, wear, the bend over "
        "the rings and the jerk of a strike all take their part of it before the fish does.",
        sources=(COMMON_PRACTICE,),
        check=_above_practice,
        rests_on=("drag",),
        reads="drag",
        differ="drag-share",
        wrong=(Example("popper", {"drag": "6 lb"}),),
        right=(Example("popper", {"drag": "2.5 lb"}),),
        mends=(usual_drag,),
        mistakes=("M05", "M06"),
    ),
    Rule(
        name="drag-too-loose",
        part=Part.DRAG,
        severity=Severity.RISK,
        what="The drag is set far below what practice uses for the technique.",
        why="When the spool slips on the strike the hook is not driven home, and a fish in "
        "cover simply swims deeper into it.",
        sources=(COMMON_PRACTICE,),
        check=_loose,
        rests_on=("drag",),
        reads="drag",
        wrong=(Example("flipping jig", {"drag": "1 lb"}),),
        right=(Example("flipping jig"),),
        mends=(usual_drag,),
        mistakes=("M05",),
    ),
    Rule(
        name="drag-strains-rod",
        part=Part.DRAG,
        severity=Severity.RISK,
        what="The drag exceeds half of the strongest line that the rod is marked for.",
        why="The rod feels the drag, not the label on the spool. Half of its top label, held "
        "at an angle, is near what a blank takes on a snag or at the boat's side.",
        sources=(COMMON_PRACTICE,),
        check=_above_rod,
        rests_on=("drag",),
        wrong=(
            Example(
                "swim jig",
                {
                    "rod.label": None,
                    "rod.line": "8-14 lb",
                    "rod.power": "medium heavy",
                    "rod.action": "fast",
                    "drag": "9 lb",
                },
            ),
        ),
        right=(
            Example(
                "swim jig",
                {
                    "rod.label": None,
                    "rod.line": "12-20 lb",
                    "rod.power": "heavy",
                    "rod.action": "fast",
                    "drag": "5 lb",
                },
            ),
        ),
        mends=(usual_drag, advice("Back the drag off, or tie on a leader within the rod's label")),
        replaces=("braid-far-above-nylon-label",),
        mistakes=("M25",),
    ),
    Rule(
        name="drag-above-reel",
        part=Part.REEL,
        severity=Severity.RISK,
        what="The drag wanted is more than the reel is marked for, or on a spinning reel "
        "more than half of that.",
        why="The drag printed on a reel is what its washers hold when screwed down hard. Near "
        "and beyond it the drag no longer slips evenly, and gears and foot take the load.",
        sources=(COMMON_PRACTICE,),
        check=_above_reel,
        rests_on=("drag",),
        wrong=(Example("drop shot", {"reel.drag": "1 lb"}),),
        right=(Example("drop shot", {"reel.drag": "15 lb"}),),
        mends=(usual_drag, usual_reel),
    ),
)
