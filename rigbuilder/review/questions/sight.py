"""Can the fish see it? How far off the line at the lure may be noticed, over the clarity of the water."""

import numpy as np

from rigbuilder.model.rig import Rig
from rigbuilder.reference.words import LineType
from rigbuilder.review.case import Case
from rigbuilder.review.questions.answer import Answer, Question, Scale, Spot, Words, curve_of, percent
from rigbuilder.review.questions.compare import Rival, rivals, swept
from rigbuilder.review.questions.rows import batch_of
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import FROM_MEMORY, Kind, Source
from rigbuilder.units.dimensions import Dimension

_PLACES = 9
_NEAR_M = 1.0  # what is nearer reads best in inches or centimetres
_SOURCES = (
    Source(Kind.COMPUTED, "contrast of a line too thin to be resolved, dimmed by the water until it is lost"),
    Source(
        Kind.PUBLISHED,
        "smallest angle a sunfish's eye resolves",
        "Spratte et al. 2021, J. Exp. Biol. 224:jeb243068",
    ),
    FROM_MEMORY,
)


def sight(case: Case, preview: Case | None = None) -> Answer:
    """Return the distance of notice [m] over clarity [m], both on logarithmic scales."""
    chosen = rivals(case, preview)
    batch, row = batch_of(case)
    clarity = float(batch.rows.given["clarity_m"][1, row])
    spread = np.geomspace(min(0.3, 0.7 * clarity), max(6.0, 1.5 * clarity), _PLACES)
    xs = tuple(sorted({*(float(x) for x in spread), clarity}))
    found = swept(case, chosen, xs, _in_clarity)
    curves = tuple(
        curve_of(_end_label(rival), rival.role, xs, [facts.sight_m for facts in figures], strong=rival.strong)
        for rival, figures in zip(chosen, found, strict=True)
    )
    seen, glint, end = case.facts.sight_m, case.facts.glint_ratio, case.end

    def sentence(speaker: Speaker) -> str:
        far = speaker.spread(seen, Dimension.LENGTH, "leader" if seen.typical < _NEAR_M else "depth")
        text = f"In water clear to {speaker.depth(clarity)} the {end.type} may be noticed from {far}."
        if glint is not None and end.type is not LineType.NYLON:
            text += f" It glints {percent(glint)} as strongly as nylon of its thickness."
        return text

    return Answer(
        Question.SIGHT, sentence, Scale("noticed from", Dimension.LENGTH, "depth", log=True),
        x=Scale("water clear to", Dimension.LENGTH, "depth", log=True), curves=curves,
        spots=(Spot(clarity, seen.typical, lambda s: s.spread(seen, Dimension.LENGTH, "depth")),),
        working=(
            "A thin line is a faint streak: its contrast shrinks with its share of "
            "the smallest angle that the "
            "eye resolves, and with every metre of water. It is noticed while the rest is above a threshold.",
            "No one has measured that threshold for bass; the band is a factor of three either way.",
        ),
        sources=_SOURCES,
    )  # fmt: skip


def _in_clarity(rig: Rig, clarity_m: float) -> Rig:
    return rig.with_(water=rig.water.with_(clarity_m=clarity_m))


def _end_label(rival: Rival) -> Words:
    """The line that is seen is the one at the lure: the leader, if there is one."""
    leader = rival.rig.leader
    if leader is None:
        return rival.label
    return lambda speaker: (
        f"{rival.label(speaker)}, leader {leader.type}"
        + ("" if leader.test_n is None else f" {speaker.test(leader.test_n)}")
    )
