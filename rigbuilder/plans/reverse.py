"""Turning worn line end for end: whether it pays, how much fresh line it brings up, and how it is done."""

from dataclasses import dataclass

from rigbuilder.plans.fill import FillPlan
from rigbuilder.plans.fillsteps import Step
from rigbuilder.plans.known import Remark
from rigbuilder.review.case import Case
from rigbuilder.review.speak import Speaker

WORN_SHARE = 1 / 3  # braid wears over about its first third [1], common practice


@dataclass(frozen=True, slots=True)
class ReversePlan:
    """A turn end for end. Lengths [m]: worn line, fresh line that comes up, what a cast and a run need."""

    worth: Remark
    worn_m: float
    fresh_m: float
    needed_m: float
    steps: tuple[Step, ...]


def reverse_plan(plan: FillPlan, case: Case, speaker: Speaker) -> ReversePlan:
    """Return how to bring the unused end of the main line to the top."""
    length = plan.feasible.main.length_m.typical
    worn = min(max(plan.cast_m, WORN_SHARE * length), length)
    fresh = length - worn
    needed = plan.past_cast_m
    return ReversePlan(
        worth=_worth(case, speaker, fresh, plan.cast_m, needed),
        worn_m=worn,
        fresh_m=fresh,
        needed_m=needed,
        steps=_steps(plan, speaker, worn),
    )


def _worth(case: Case, speaker: Speaker, fresh: float, cast: float, needed: float) -> Remark:
    if not case.is_braided():
        words = (
            f"Seldom worth it: {case.main.type} keeps the coils of the spool, and turned round it is as old "
            "as before. Renew the top part, or all of it."
        )
        return Remark("note", words)
    up = speaker.line(fresh)
    if fresh < cast:
        words = (
            f"Too short for it: only {up} of unused line would come up, and the worn part stays in the cast."
        )
        return Remark("risk", words)
    if fresh < needed:
        words = f"It brings up {up} of unused line: enough for the cast, yet a run reaches the worn part."
        return Remark("note", words)
    return Remark(
        "right", f"Worth it once: {up} of unused line comes up, and the worn part goes to the bottom."
    )


def _steps(plan: FillPlan, speaker: Speaker, worn: float) -> tuple[Step, ...]:
    backed = plan.feasible.backing is not None and plan.feasible.backing.length_m.typical > 0.0
    until = "down to the backing knot, and cut the knot out" if backed else "down to the bare spool"
    again = (
        "Tie what was the top end, the worn one, to the backing"
        if backed
        else "Tie the worn end to the spool"
    )
    return (
        Step("Look first", f"Feel along the first {speaker.line(worn)}. Cut off what is frayed or nicked; "
             "the rest may be pale and fluffy."),
        Step("Run it off", f"Wind the main line onto another reel, under a light pull, {until}. Its worn end "
             "now lies innermost there."),
        Step("Run it over once more", "Wind it from there onto a third reel or a line holder. Now the worn "
             "end is outside again. Straight back from the second reel it would lie as before: two runs."),
        Step("Wind it back", f"{again}, and wind on firmly through a wet cloth. The end that was never cast "
             "is now on top."),
        Step("Without other reels", "Walk the line out over clean grass, carry the reel to its far, "
             "worn end, tie that on and wind from there."),
        Step("Note it", "Write “reversed” and the day into the card's log: it works once."),
    )  # fmt: skip
