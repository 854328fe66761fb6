"""All plans of a rig as a page of text for the terminal."""

import textwrap
from collections.abc import Iterable, Sequence
from datetime import date

from rigbuilder.plans.care import advice, care_due
from rigbuilder.plans.chain import ChainPlan, chain_plan
from rigbuilder.plans.cost import cost_plan, cost_remarks, cost_sheet
from rigbuilder.plans.dragplan import DragPlan, drag_plan, drag_remarks
from rigbuilder.plans.fill import FillPlan, fill_plan
from rigbuilder.plans.fillsteps import Step, fill_steps
from rigbuilder.plans.fillwords import consequences, fill_sheet, headline, taken_words
from rigbuilder.plans.joints import Joint, joints
from rigbuilder.plans.known import Known, Remark
from rigbuilder.plans.reverse import reverse_plan
from rigbuilder.plans.sheet import as_text
from rigbuilder.review.case import Case
from rigbuilder.review.explain import distinct, source_words
from rigbuilder.review.speak import Speaker
from rigbuilder.units.dimensions import Dimension

_WIDTH = 88
_MARK = {"fault": "✗", "risk": "!", "note": "·", "right": "✓"}
CAUTION = (
    "Pull on knots with gloves on and the face turned away; never wrap braid round a hand; take old line "
    "home. Local rules come first."
)


def plans_text(case: Case, speaker: Speaker, *, today: date) -> str:
    """Return fill, cost, joints, chain, drag and care as text."""
    fill = fill_plan(case)
    blocks = [
        case.rig.name,
        _fill(fill, case, speaker),
        _steps("How to fill it", fill_steps(fill, case, speaker)),
        _reverse(fill, case, speaker),
        _cost(fill, case, speaker),
        *(_joint(joint, speaker) for joint in joints(case, speaker)),
        _chain(chain_plan(case, speaker), speaker),
        _drag(drag_plan(case, fill), speaker),
        _care(case, today),
        CAUTION,
    ]
    return "\n\n".join(block for block in blocks if block)


def _fill(plan: FillPlan, case: Case, speaker: Speaker) -> str:
    lines = [as_text(fill_sheet(plan, speaker)), f"  {headline(plan, speaker)}"]
    lines += _remarks(consequences(plan, speaker))
    lines += [f"  taken for granted: {taken_words(taken, speaker)}" for taken in plan.spool.taken]
    sources = distinct(source for known in plan.known() for source in known.sources)
    lines += [f"  how we know: {source_words(source)}" for source in sources]
    return "\n".join(lines)


def _steps(title: str, steps: Sequence[Step]) -> str:
    lines = [title]
    lines += [_wrapped(f"{number}. {step.title}: {step.text}") for number, step in enumerate(steps, start=1)]
    return "\n".join(lines)


def _reverse(fill: FillPlan, case: Case, speaker: Speaker) -> str:
    if not case.is_braided():
        return ""
    plan = reverse_plan(fill, case, speaker)
    return f"{_steps('Turned end for end', plan.steps)}\n{_remark(plan.worth)}"


def _cost(fill: FillPlan, case: Case, speaker: Speaker) -> str:
    plan = cost_plan(fill, case)
    body = [as_text(cost_sheet(plan, speaker))] if plan.lines else ["What does it cost?"]
    return "\n".join([*body, *_remarks(cost_remarks(plan, speaker))])


def _joint(joint: Joint, speaker: Speaker) -> str:
    shown = [one for one in joint.candidates if one.suits][:3]
    lines = [f"Joint {joint.title}" + (f", now {joint.present}" if joint.present else "")]
    for one in shown:
        share = "–".join(f"{100 * end:.0f}" for end in (one.share.low, one.share.high))
        lines.append(
            f"  {one.knot.name}: bears {speaker.forces(one.strength_n)}, {share} per cent of the line; "
            f"{_turns(one.knot.turns)}{one.reason}"
        )
    if joint.proposed is not None:
        lines += [_wrapped(f"{n}. {step}") for n, step in enumerate(joint.proposed.knot.steps, start=1)]
        lines += [f"  how we know: {source_words(source)}" for source in distinct(joint.proposed.sources)]
    return "\n".join(lines)


def _turns(turns: str) -> str:
    return "" if turns in ("", "none") else f"turns: {turns}; "


def _chain(plan: ChainPlan, speaker: Speaker) -> str:
    lines = ["Where will it break?"]
    for one in plan.links:
        chance = f"{100 * one.link.goes_first:.0f} %"
        lines.append(
            f"  {one.title}: {speaker.forces(one.link.strength_n)}, first in {chance}; lost: {one.lost}"
        )
    lines.append(f"  whole chain: {speaker.forces(plan.whole.value)}")
    return "\n".join([*lines, _remark(plan.verdict), *_known((plan.whole,))])


def _drag(plan: DragPlan, speaker: Speaker) -> str:
    lines = ["What drag?"]
    shown = (plan.straight, plan.over_rod, plan.ceiling, plan.rod, plan.reel)
    lines += [f"  {one.label}: {speaker.spread(one.value, Dimension.FORCE, 'drag')}" for one in shown]
    for point in plan.emptied[1:]:
        grown = f"{point.growth.typical:.2f} times"
        lines.append(f"  with {speaker.line(point.out_m)} out: {grown}, {speaker.forces(point.at_fish_n)}")
    return "\n".join(
        [*lines, *_remarks(drag_remarks(plan, speaker)), *_known((plan.straight, plan.over_rod))]
    )


def _care(case: Case, today: date) -> str:
    lines = [f"Care, as of {today.isoformat()}"]
    lines += [
        _wrapped(f"{due.urgency}: {due.action}. {due.why}")
        for due in care_due(case.rig, today, case.reference)
    ]
    lines += [_wrapped(f"{one.line}: {one.text}") for one in advice(case.rig, case.reference)]
    return "\n".join(lines)


def _known(found: Iterable[Known]) -> list[str]:
    sources = distinct(source for known in found for source in known.sources)
    return [f"  how we know: {source_words(source)}" for source in sources]


def _remarks(found: Iterable[Remark]) -> list[str]:
    return [_remark(remark) for remark in found]


def _remark(remark: Remark) -> str:
    return _wrapped(f"{_MARK[remark.severity]} {remark.text}")


def _wrapped(text: str) -> str:
    return textwrap.fill(text, _WIDTH, initial_indent="  ", subsequent_indent="    ")
