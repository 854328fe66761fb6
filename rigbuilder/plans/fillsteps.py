"""How to fill the reel, step by step, for someone who does it for the first time; counted by hand."""

from dataclasses import dataclass

from rigbuilder.plans.fill import FillPlan, Winding
from rigbuilder.plans.fillwords import count_words, gap_words, gram_words
from rigbuilder.plans.pins import Quantity
from rigbuilder.reference.care import FillingLimits
from rigbuilder.reference.words import ReelKind
from rigbuilder.review.case import Case
from rigbuilder.review.speak import Speaker

_WEIGHABLE_KG = 0.005  # below this a kitchen scale is no help [kg], from memory


@dataclass(frozen=True, slots=True)
class Step:
    """One step: what to do, and how."""

    title: str
    text: str


def fill_steps(plan: FillPlan, case: Case, speaker: Speaker) -> tuple[Step, ...]:
    """Return the steps of a fill by counting turns, and the way that needs no counting at the end."""
    shown = plan.feasible
    steps = [_first(shown, case), _filler(case)]
    under = shown.backing
    backed = under is not None and under.length_m.typical > 0.0
    if under is not None and backed:
        steps += [_wind_backing(shown, under, case, speaker), _join(case)]
    steps += [_wind_main(shown, case, speaker, backed=backed), _finish(case)]
    if backed:
        steps.append(_sure_way(case))
    return tuple(steps)


def _first(plan: FillPlan, case: Case) -> Step:
    knot = case.rig.knots.arbor or "arbor"
    under = plan.backing
    bare = under is None or under.length_m.typical <= 0.0
    tape = ""
    if bare and plan.main.line.type.is_braided:
        tape = "Put one turn of thin tape round the bare spool, edges side by side, sticky side in. "
    name = "main line" if bare else "backing"
    return Step(
        "Tie on",
        f"{tape}Tie the {name} round the spool with the {knot} knot, slide it down tight and trim it, so "
        "that no end sticks out.",
    )


def _filler(case: Case) -> Step:
    if case.rig.reel.kind is ReelKind.BAITCASTING:
        text = (
            "Let the filler turn on a pencil, line coming off its top and going on over the top of the reel."
        )
    else:
        text = (
            "Put the filler on the floor with its label up. Wind a dozen turns and slacken: if line springs "
            "into loops, turn the filler over."
        )
    return Step("Set the filler", text)


def _tension(part: Winding, limits: FillingLimits, speaker: Speaker) -> str:
    if part.line.type.is_braided and part.line.test_n:
        pull = min(limits.wind_tension_braid_share * part.line.test_n, limits.wind_tension_braid_max_n)
        return f"Hold it firmly through a wet cloth, about {speaker.force(pull)}."
    low, high = limits.wind_tension_single_strand_n
    return f"Hold it lightly between two fingers, {speaker.force(low)} to {speaker.force(high)} of pull."


def _amount(part: Winding, speaker: Speaker) -> str:
    words = f"{count_words(part.turns)} turns of the handle, about {speaker.line(part.length_m.typical)}"
    if part.mass_kg.typical >= _WEIGHABLE_KG:
        words += f" or {gram_words(part.mass_kg)} on a kitchen scale"
    return words


def _wind_backing(plan: FillPlan, part: Winding, case: Case, speaker: Speaker) -> Step:
    depth = (plan.spool.rim_m.typical - part.over_m.typical) / 2.0
    tension = _tension(part, case.reference.filling.limits, speaker)
    return Step(
        "Wind on the backing",
        f"{_amount(part, speaker)}. {tension} Count aloud in tens. It should then stand about "
        f"{gap_words(depth, speaker)} below the rim: lay a ruler across and look.",
    )


def _join(case: Case) -> Step:
    knot = case.rig.backing.knot if case.rig.backing else None
    return Step(
        "Join the lines",
        f"Tie the main line to the backing with the {knot or 'double uni'} knot. Wet it, draw it down, pull "
        "hard once with gloves on, trim both ends close and lay the knot to one side of the spool.",
    )


def _wind_main(plan: FillPlan, case: Case, speaker: Speaker, *, backed: bool) -> Step:
    part, gap = plan.main, gap_words(plan.lip_gap_m.typical, speaker)
    tension = _tension(part, case.reference.filling.limits, speaker)
    if not backed:
        text = f"{_amount(part, speaker)}, and stop at a lip gap of {gap} whatever the count says. {tension}"
        return Step("Wind on the main line", text)
    held = Quantity.MAIN in plan.held
    stop = (
        f"All of it should go on and leave a lip gap of {gap}. Where it fills up early, take backing off; "
        "where it stays low, note how many turns were missing and give the backing as much more next time."
        if held
        else f"Stop at a lip gap of {gap}."
    )
    return Step("Wind on the main line", f"{_amount(part, speaker)}. {tension} {stop}")


def _finish(case: Case) -> Step:
    wet = ""
    if case.main.type.is_single_strand:
        wet = "Wet the full spool, make a few long casts and wind back under a light pull. "
    else:
        wet = "Cast it out far and wind it back under a firm pull, so that no turn can bury. "
    return Step(
        "Finish",
        f"{wet}Write line, test, length and date on a sticker inside the spool, and note “filled” on "
        "the card.",
    )


def _sure_way(case: Case) -> Step:
    return Step(
        "Or without counting",
        "Labels are rough; this way needs none. Wind the main line on first, join the backing to it and wind "
        "until the lip gap is right, then cut. Now bring it the right way round: run it onto a spare spool "
        "of the same reel, and it is done; without one, run it onto another reel, from there onto a "
        "third, and back. Each run turns it end for end, so one run or three will do, never two.",
    )
