"""What to set the drag to: on the scale, straight and over the bent rod, and what becomes of it."""

from dataclasses import dataclass

import numpy as np

from rigbuilder.mechanics import guides, reeldrag
from rigbuilder.mechanics.arrays import Array
from rigbuilder.plans.fill import FillPlan
from rigbuilder.plans.known import Known, Remark, at_most, spread_one
from rigbuilder.reference.ranges import Range
from rigbuilder.review.case import Case
from rigbuilder.review.figuring.dragging import ROD_ANGLE_RAD
from rigbuilder.review.figuring.working import working
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import COMMON_PRACTICE, FROM_MEMORY, Kind, Source

_CAPSTAN = Source(
    Kind.PUBLISHED,
    "Euler–Eytelwein equation; friction of nylon on rings is a wide range",
    "CRC Materials Science & Engineering Handbook 2001, Table 399",
)
_TORQUE = Source(
    Kind.COMPUTED, "the drag's turning moment stays while the radius shrinks: full radius over present radius"
)
APART = 0.05  # shares of the line that are told apart [1]
MOST_OUT = 0.95  # nobody fishes on the last turns [1], from memory


@dataclass(frozen=True, slots=True)
class Emptied:
    """Drag once some line has run out: how much [m], times what was set, and the pull over the rod [N]."""

    out_m: float
    growth: Range
    at_fish_n: Range


@dataclass(frozen=True, slots=True)
class DragPlan:
    """The drag in newtons: on the scale straight off the rod, over the bent rod, and its limits."""

    straight: Known
    over_rod: Known
    ceiling: Known
    rod: Known
    reel: Known
    weakest_label_n: float
    percent: tuple[float, float] | None
    emptied: tuple[Emptied, ...]
    present_n: float | None


def drag_plan(case: Case, fill: FillPlan) -> DragPlan:
    """Return what to set, by weakest link, technique and hooks, within what rod and reel bear."""
    facts, practice = case.facts, case.technique.drag
    straight = _within(case)
    friction = _needed(facts.columns.value("guide_friction", facts.row))
    over = spread_one(_over_rod, {"drag_n": straight, "friction": friction, "angle": Range(*ROD_ANGLE_RAD)})
    span = practice.percent
    return DragPlan(
        straight=Known(
            "drag", "to set on the scale, rod pointed at it", straight, "N",
            "practice's share of the weakest label, below what chain, rod and reel bear",
            (("what the chain allows", facts.drag_ceiling_n), ("what the reel gives", facts.reel_limit_n)),
            (*case.technique.sources, COMMON_PRACTICE),
        ),
        over_rod=Known(
            "drag over the rod", "the same setting, pulled over the bent rod", over["over_n"], "N",
            "drag × exp(friction × angle over the rod)",
            (("drag", straight), ("friction on the rings", friction), ("angle", Range(*ROD_ANGLE_RAD))),
            (_CAPSTAN, FROM_MEMORY),
        ),
        ceiling=_figure("drag_ceiling_n", facts.drag_ceiling_n, case),
        rod=_figure("rod_limit_n", facts.rod_limit_n, case),
        reel=_figure("reel_limit_n", facts.reel_limit_n, case),
        weakest_label_n=case.weakest_label_n,
        percent=None if span is None else (span.low, span.high),
        emptied=_emptied(case, fill.feasible, straight, friction),
        present_n=case.rig.drag_n,
    )  # fmt: skip


def _within(case: Case) -> Range:
    """Return practice's setting, kept below what the reel gives and what the rod bears at most."""
    facts = case.facts
    wish = at_most(facts.drag_recommended_n, facts.reel_limit_n.typical)
    return at_most(wish, facts.rod_limit_n.high)


def _needed(value: Range | None) -> Range:
    if value is None:
        raise LookupError("every rig has this figure")
    return value


def _figure(name: str, value: Range, case: Case) -> Known:
    row = working(name, case.facts)
    inputs = tuple((one.label, one.value) for one in row.inputs if one.value is not None)
    return Known(name, row.label, value, row.unit, row.formula, inputs, row.sources)


def _over_rod(*, drag_n: Array, friction: Array, angle: Array) -> dict[str, Array]:
    return {"over_n": guides.pull_at_fish(drag_n=drag_n, friction=friction, turning_rad=angle)}


def _emptied(case: Case, fill: FillPlan, straight: Range, friction: Range) -> tuple[Emptied, ...]:
    """Return the drag after a cast, a cast and a run, half the line, nearly all of it."""
    length = fill.main.length_m.typical
    run = _needed(case.facts.columns.value("run_m", case.facts.row)).typical
    wanted = (0.0, fill.cast_m, fill.cast_m + run, length / 2.0, MOST_OUT * length)
    outs: list[float] = []
    for out in sorted(min(out, MOST_OUT * length) for out in wanted):
        if not outs or out - outs[-1] > APART * length:
            outs.append(out)
    return tuple(_after(out, fill, straight, friction) for out in outs)


def _after(out_m: float, fill: FillPlan, straight: Range, friction: Range) -> Emptied:
    share = out_m / max(fill.main.length_m.typical, 1e-9)

    def grown(
        *, drag_n: Array, friction: Array, angle: Array, full_m: Array, core_m: Array
    ) -> dict[str, Array]:
        # The main line lies between core and full: what has run out takes its share of that room.
        left = np.sqrt(full_m**2 - share * np.maximum(full_m**2 - core_m**2, 0.0))
        growth = reeldrag.drag_growth(set_radius_m=full_m / 2.0, radius_m=left / 2.0)
        return {
            "growth": growth,
            "at_fish_n": growth * guides.pull_at_fish(drag_n=drag_n, friction=friction, turning_rad=angle),
        }

    core = at_most(fill.main.under_m, fill.main.over_m.low)
    found = spread_one(
        grown,
        {
            "drag_n": straight,
            "friction": friction,
            "angle": Range(*ROD_ANGLE_RAD),
            "full_m": Range.exactly(fill.main.over_m.typical),
            "core_m": at_most(core, fill.main.over_m.typical),
        },
    )
    return Emptied(out_m, found["growth"], found["at_fish_n"])


def drag_remarks(plan: DragPlan, speaker: Speaker) -> tuple[Remark, ...]:
    """Return what to say about the drag: how to set it, and how the present setting stands."""
    found = [_basis(plan, speaker)]
    last = plan.emptied[-1] if plan.emptied else None
    if last is not None and last.growth.typical >= 1.15:
        words = (
            f"With {speaker.line(last.out_m)} out the same knob pulls about {last.growth.typical:.1f} times "
            f"as hard, {speaker.forces(last.at_fish_n)} over the rod: ease it on a long run."
        )
        found.append(Remark("note", words))
    if plan.reel.value.typical < plan.straight.value.typical * 1.01:
        found.append(Remark("note", "The reel gives no more than this, however far its knob is turned."))
    if plan.present_n is not None:
        found.append(_present(plan, plan.present_n, speaker))
    return tuple(found)


def _basis(plan: DragPlan, speaker: Speaker) -> Remark:
    label = speaker.test(plan.weakest_label_n)
    if plan.percent is None:
        return Remark(
            "note", f"Practice locks the drag here; what rod and reel bear is the limit, not {label}."
        )
    low, high = plan.percent
    words = (
        f"Practice takes {low:g} to {high:g} per cent of the weakest label, {label}. Writers differ: from 15 "
        "per cent to a third."
    )
    return Remark("note", words)


def _present(plan: DragPlan, present_n: float, speaker: Speaker) -> Remark:
    wanted, ceiling = plan.straight.value, plan.ceiling.value
    now = speaker.force(present_n)
    if present_n > ceiling.high:
        return Remark("fault", f"{now} is more than the weakest link bears in any case.")
    if present_n > ceiling.typical:
        return Remark("risk", f"{now} may be more than the weakest link bears once the rod bends.")
    if present_n > wanted.high * 1.15:
        return Remark("note", f"{now} is above what practice sets: {speaker.forces(wanted)}.")
    if present_n < wanted.low * 0.85:
        return Remark("note", f"{now} is below what practice sets: {speaker.forces(wanted)}.")
    return Remark("right", f"{now} is within what practice sets.")
