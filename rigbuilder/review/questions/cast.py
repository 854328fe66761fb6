"""How far does it cast? Against the usual rig first, over the weight of the lure."""

import numpy as np

from rigbuilder.model.rig import Rig
from rigbuilder.review.case import Case
from rigbuilder.review.questions.answer import (
    Answer,
    Limit,
    Question,
    Scale,
    Spot,
    Words,
    curve_of,
    percent,
)
from rigbuilder.review.questions.compare import rivals, swept
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import FROM_MEMORY, Kind, Source
from rigbuilder.units.dimensions import Dimension

_PLACES = 7
_SOURCES = (
    Source(Kind.COMPUTED, "flight of the lure with its drag and the line that it drags along, step by step"),
    FROM_MEMORY,
)


def cast(case: Case, preview: Case | None = None) -> Answer:
    """Return the cast over the lure's weight, in hundredths of the usual rig's."""
    chosen, lure = rivals(case, preview), case.rig.lure
    weight, share, metres = lure.weight_kg, case.facts.cast_share, case.facts.cast_distance_m
    xs = tuple(sorted({*(float(x) for x in np.geomspace(0.5, 2.0, _PLACES) * weight), weight}))
    found = swept(case, chosen, xs, _with_weight)
    curves = tuple(
        curve_of(
            rival.label,
            rival.role,
            xs,
            [facts.cast_share.scaled(100.0) for facts in row],
            strong=rival.strong,
        )
        for rival, row in zip(chosen, found, strict=True)
    )
    limits = [Limit(100.0, lambda _: "the usual rig")]
    label = case.rig.rod.lure_kg
    if label is not None:
        ends = ((label.low, "rod label from"), (label.high, "rod label to"))
        limits += [
            Limit(end, _label_end(words, end), axis="x") for end, words in ends if xs[0] < end < xs[-1]
        ]

    def sentence(speaker: Speaker) -> str:
        reach = speaker.spread(metres, Dimension.LENGTH, "cast")
        return f"It casts {percent(share)} as far as the usual rig with the same arms, about {reach}."

    return Answer(
        Question.CAST, sentence, Scale("cast, of the usual rig's", unit="%"),
        x=Scale("weight of the lure", Dimension.MASS, "lure"), curves=curves, limits=tuple(limits),
        spots=(Spot(weight, 100.0 * share.typical, lambda s: f"{s.lure(weight)}: {percent(share)}"),),
        working=(
            "The lure leaves at the speed that sends the technique's usual rig as far as it is usually cast; "
            "it then loses speed to its own drag and to the line that it pulls off and along.",
            "Metres are known within about a third; the difference between two lines is surer.",
        ),
        sources=_SOURCES,
    )  # fmt: skip


def _label_end(words: str, weight_kg: float) -> Words:
    return lambda speaker: f"{words} {speaker.lure(weight_kg)}"


def _with_weight(rig: Rig, weight_kg: float) -> Rig:
    return rig.with_(lure=rig.lure.with_(weight_kg=weight_kg))
