"""Plans as plain data, the way ``plan --json`` and ``review --json`` print them. Numbers are in SI units."""

from collections.abc import Sequence
from datetime import date
from typing import Any

from rigbuilder.plans.care import advice, care_due
from rigbuilder.plans.chain import ChainPlan, chain_plan
from rigbuilder.plans.cost import CostPlan, cost_plan, cost_remarks
from rigbuilder.plans.dragplan import DragPlan, drag_plan, drag_remarks
from rigbuilder.plans.fill import FillPlan, Winding, fill_plan
from rigbuilder.plans.fillsteps import Step, fill_steps
from rigbuilder.plans.fillwords import consequences, headline
from rigbuilder.plans.joints import Joint, joints
from rigbuilder.plans.known import Known, Remark, Taken
from rigbuilder.plans.reverse import reverse_plan
from rigbuilder.reference.ranges import Range
from rigbuilder.review.asjson import source_data
from rigbuilder.review.case import Case
from rigbuilder.review.explain import distinct
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import Source
from rigbuilder.units.dimensions import Dimension

_FIGURES = 4


def figures_of_plans(case: Case, speaker: Speaker) -> dict[str, Any]:
    """Return what plans add to the figures of a review: the fill, the chain, the drag."""
    fill = fill_plan(case)
    return {
        "fill": fill_data(fill, case, speaker),
        "chain": chain_data(chain_plan(case, speaker))["links"],
        "fuse": remark_data(chain_plan(case, speaker).verdict),
        "drag_plan": drag_data(drag_plan(case, fill), speaker),
    }


def plans_data(case: Case, speaker: Speaker, *, today: date) -> dict[str, Any]:
    """Return every plan of a rig as plain data."""
    fill = fill_plan(case)
    return {
        "fill": fill_data(fill, case, speaker),
        "steps": steps_data(fill_steps(fill, case, speaker)),
        "reverse": _reverse(fill, case, speaker),
        "cost": cost_data(cost_plan(fill, case), speaker),
        "joints": [joint_data(joint) for joint in joints(case, speaker)],
        "chain": chain_data(chain_plan(case, speaker)),
        "drag_plan": drag_data(drag_plan(case, fill), speaker),
        "care": [
            {"do": due.action, "when": due.urgency, "why": due.why, "basis": _basis(due.sources)}
            for due in care_due(case.rig, today, case.reference)
        ],
        "advice": [{"line": one.line, "say": one.text} for one in advice(case.rig, case.reference)],
    }


def fill_data(plan: FillPlan, case: Case, speaker: Speaker) -> dict[str, Any]:
    """Return a fill; where the wish is impossible, the nearest one stands in ``nearest``."""
    spool = plan.spool
    data: dict[str, Any] = {
        "possible": plan.possible,
        "say": headline(plan, speaker),
        "held": {str(name): str(pin.origin) for name, pin in plan.held.items()},
        "follows": str(plan.follows),
        **_amounts(plan),
        "knot_needed": {**rounded(plan.needed_m), "unit": "m"},
        "cast": {**rounded(Range.exactly(plan.cast_m)), "unit": "m"},
        "spool": {
            "arbor": {**rounded(spool.arbor_m), "unit": "m"},
            "rim": {**rounded(spool.rim_m), "unit": "m"},
            "room": {**rounded(spool.room.value), "unit": "m3"},
        },
        "remarks": [remark_data(remark) for remark in consequences(plan, speaker)],
        "taken": [_taken(taken) for taken in spool.taken],
        "known": [known_data(known) for known in plan.known()],
    }
    if plan.nearest is not None:
        data["nearest"] = _amounts(plan.nearest)
    return data


def _amounts(plan: FillPlan) -> dict[str, Any]:
    return {
        "backing": None if plan.backing is None else _winding(plan.backing),
        "main": _winding(plan.main),
        "lip_gap": {**rounded(plan.lip_gap_m), "unit": "m"},
    }


def _winding(part: Winding) -> dict[str, Any]:
    return {
        "type": str(part.line.type),
        "length": {**rounded(part.length_m), "unit": "m"},
        "turns": rounded(part.turns),
        "mass": {**rounded(part.mass_kg), "unit": "kg"},
        "diameter": {**rounded(part.diameter_m), "unit": "m"},
    }


def steps_data(steps: Sequence[Step]) -> list[dict[str, str]]:
    """Return steps in order."""
    return [{"title": step.title, "say": step.text} for step in steps]


def _reverse(fill: FillPlan, case: Case, speaker: Speaker) -> dict[str, Any]:
    plan = reverse_plan(fill, case, speaker)
    return {
        "worth": remark_data(plan.worth),
        "worn": {**rounded(Range.exactly(plan.worn_m)), "unit": "m"},
        "fresh": {**rounded(Range.exactly(plan.fresh_m)), "unit": "m"},
        "steps": steps_data(plan.steps),
    }


def cost_data(plan: CostPlan, speaker: Speaker) -> dict[str, Any]:
    """Return the cost of a fill and of a season, by currency."""
    return {
        "lines": [
            {
                "part": one.name,
                "length": {**rounded(one.length_m), "unit": "m"},
                "cost": {**rounded(one.cost), "currency": one.price.currency},
                "fills_per_spool": one.fills,
                "spools_needed": one.spools,
            }
            for one in plan.lines
        ],
        "fill": _money(plan.totals),
        "season": _money(plan.season),
        "refills": plan.refills,
        "refills_why": plan.refills_why,
        "backing_saves": _money((plan.saved,) if plan.saved else ()),
        "remarks": [remark_data(remark) for remark in cost_remarks(plan, speaker)],
    }


def _money(found: Sequence[tuple[str, Range]]) -> list[dict[str, Any]]:
    return [{**rounded(cost), "currency": currency} for currency, cost in found]


def joint_data(joint: Joint) -> dict[str, Any]:
    """Return one joint with its knots, the proposed one first."""
    return {
        "joint": joint.title,
        "field": joint.path or None,
        "present": joint.present,
        "proposed": joint.proposed.knot.name if joint.proposed else None,
        "diameter_ratio": None if joint.ratio is None else rounded(joint.ratio),
        "knots": [
            {
                "name": one.knot.name,
                "suits": one.suits,
                "severity": one.severity.word,
                "reason": one.reason,
                "turns": one.knot.turns,
                "share": rounded(one.share),
                "strength": {**rounded(one.strength_n), "unit": "N"},
                "steps": list(one.knot.steps),
                "basis": _basis(one.sources),
            }
            for one in joint.candidates
        ],
    }


def chain_data(plan: ChainPlan) -> dict[str, Any]:
    """Return the links from the hook upwards, and the word on the fuse."""
    return {
        "links": [
            {
                "part": str(one.link.part),
                "name": one.link.name,
                **rounded(one.link.strength_n),
                "unit": "N",
                "goes_first": round(one.link.goes_first, 3),
                "lost": one.lost,
                "basis": _basis(one.sources),
            }
            for one in plan.links
        ],
        "whole": known_data(plan.whole),
        "fuse": plan.fuse.link.name,
        "verdict": remark_data(plan.verdict),
    }


def drag_data(plan: DragPlan, speaker: Speaker) -> dict[str, Any]:
    """Return what to set and what becomes of it."""
    return {
        "straight": known_data(plan.straight),
        "over_rod": known_data(plan.over_rod),
        "ceiling": known_data(plan.ceiling),
        "rod": known_data(plan.rod),
        "reel": known_data(plan.reel),
        "percent_of_weakest_label": None if plan.percent is None else list(plan.percent),
        "weakest_label": {**rounded(Range.exactly(plan.weakest_label_n)), "unit": "N"},
        "emptied": [
            {
                "out": {**rounded(Range.exactly(one.out_m)), "unit": "m"},
                "growth": rounded(one.growth),
                "over_rod": {**rounded(one.at_fish_n), "unit": "N"},
            }
            for one in plan.emptied
        ],
        "remarks": [remark_data(remark) for remark in drag_remarks(plan, speaker)],
    }


def known_data(known: Known) -> dict[str, Any]:
    """Return one figure with its working."""
    return {
        "name": known.label,
        **rounded(known.value),
        "unit": known.unit,
        "formula": known.formula,
        "inputs": [{"name": label, **rounded(value)} for label, value in known.inputs],
        "basis": _basis(known.sources),
    }


def remark_data(remark: Remark) -> dict[str, str]:
    """Return one remark."""
    return {"severity": remark.severity, "say": remark.text}


def _taken(taken: Taken) -> dict[str, Any]:
    return {
        "field": taken.field or None,
        "name": taken.label,
        **rounded(taken.value),
        "unit": "m" if taken.dimension is Dimension.LENGTH else "",
        "why": taken.why,
        "basis": _basis((taken.source,)),
    }


def _basis(sources: Sequence[Source]) -> list[dict[str, str]]:
    return [source_data(source) for source in distinct(sources)]


def rounded(value: Range) -> dict[str, float]:
    """Return low, typical and high to four figures."""
    names = ("low", "typical", "high")
    return {name: float(f"{part:.{_FIGURES}g}") for name, part in zip(names, value, strict=True)}
