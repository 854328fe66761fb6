"""How deep, how still? Running depth of what is wound in, time to the bottom, pull on a floating nose."""

from collections.abc import Callable

from rigbuilder.reference.ranges import Range
from rigbuilder.review.case import Case
from rigbuilder.review.facts import Facts
from rigbuilder.review.questions.answer import (
    Answer,
    Limit,
    Question,
    Row,
    Scale,
    Spot,
    Words,
    curve_of,
    percent,
)
from rigbuilder.review.questions.compare import Rival, each, rivals, swept
from rigbuilder.review.questions.distances import at_cast, cast_of, distances
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import FROM_MEMORY, Kind, Source
from rigbuilder.units.dimensions import Dimension

_TOWED = (
    Source(Kind.COMPUTED, "steady shape of a towed line, integrated from the lure to the rod tip"),
    Source(
        Kind.PUBLISHED, "cable equations as in the WHOI Cable source code; accuracy: Kebede and others 2016"
    ),
    FROM_MEMORY,
)
_HANGING = (
    Source(
        Kind.COMPUTED, "catenary of the wetted line that hangs from the nose, weight per metre times length"
    ),
    FROM_MEMORY,
)
_DROPPING = (
    Source(Kind.COMPUTED, "weight in water against the drag of lure and line on the way down"),
    FROM_MEMORY,
)


def depth(case: Case, preview: Case | None = None) -> Answer:
    """Return what suits the lure: depth over line out, seconds to the bottom, or pull on the nose."""
    chosen, facts = rivals(case, preview), case.facts
    if facts.depth_m is not None:
        return _running(case, chosen, facts.depth_m)
    if facts.nose_share is not None:
        return _resting(case, chosen, facts.nose_share)
    if facts.drop_s is not None:
        return _dropping(case, chosen, facts.drop_s)
    return Answer(
        Question.DEPTH,
        lambda _: "The lure neither floats, sinks nor is wound in fast enough for the line to set its depth.",
        Scale("depth", Dimension.LENGTH, "depth"),
        sources=(FROM_MEMORY,),
    )


def _running(case: Case, chosen: tuple[Rival, ...], runs: Range) -> Answer:
    cast = cast_of(case)
    xs = distances(cast, longest=1.6 * cast)
    found = swept(case, chosen, xs, at_cast)
    curves = tuple(
        curve_of(rival.label, rival.role, xs, [facts.depth_m for facts in row], strong=rival.strong)
        for rival, row in zip(chosen, found, strict=True)
    )
    bottom = case.rig.water.depth_m
    limits = () if bottom is None else (Limit(bottom, _bottom_words(bottom)),)

    def sentence(speaker: Speaker) -> str:
        said = speaker.spread(runs, Dimension.LENGTH, "depth")
        text = f"With {speaker.cast(cast)} of line out the lure runs at about {said}."
        if bottom is not None and runs.typical > bottom:
            text += f" The water is only {speaker.depth(bottom)} deep: it drags on the bottom."
        return text

    return Answer(
        Question.DEPTH, sentence, Scale("depth", Dimension.LENGTH, "depth", downwards=True, low=0.0),
        x=Scale("line out", Dimension.LENGTH, "cast"), curves=curves, limits=limits,
        spots=(Spot(cast, runs.typical, lambda s: s.spread(runs, Dimension.LENGTH, "depth")),),
        working=(
            "The lure pulls down and back; the water pushes against every bit of "
            "line. The shape in which all "
            "of it balances is followed from the lure to the rod tip. Thinner line "
            "meets less and runs deeper.",
            "Divers are held to the depth on their box, on the technique's usual line at its usual cast.",
        ),
        sources=_TOWED,
    )  # fmt: skip


def _bottom_words(depth_m: float) -> Words:
    return lambda speaker: f"bottom at {speaker.depth(depth_m)}"


def _resting(case: Case, chosen: tuple[Rival, ...], share: Range) -> Answer:
    rows = _rows(case, chosen, lambda facts: _hundredths(facts.nose_share))

    def sentence(_: Speaker) -> str:
        if share.high < 0.002:
            return "At rest the line lies on the water and leaves the lure's nose alone."
        return f"In a pause the sinking line hangs on the nose with {percent(share)} of the lure's weight."

    return Answer(
        Question.DEPTH, sentence, Scale("pull on the nose, of the lure's weight", unit="%"), rows=rows,
        working=(
            "Wetted line that is heavier than water sags between the nose and "
            "where it leaves the water; the nose "
            "carries it as far as its lowest point. Line that floats pulls nothing.",
            "Pause, slack and the length that lies on the water are taken as wide ranges.",
        ),
        sources=_HANGING,
    )  # fmt: skip


def _dropping(case: Case, chosen: tuple[Rival, ...], seconds: Range) -> Answer:
    rows = _rows(case, chosen, lambda facts: facts.drop_s)
    bottom = case.rig.water.depth_m

    def sentence(speaker: Speaker) -> str:
        where = "the bottom" if bottom is None else f"the bottom at {speaker.depth(bottom)}"
        low, typical, high = (f"{value:.2g}" for value in seconds)
        return f"On free line it takes about {typical} s ({low}–{high}) to {where}; then it lies still."

    return Answer(
        Question.DEPTH, sentence, Scale("time to the bottom", unit="s"), rows=rows,
        working=(
            "The lure sinks as fast as its weight in water can push lure and line through it; the line that "
            "follows it down rubs along the water and slows it the deeper it goes.",
        ),
        sources=_DROPPING,
    )  # fmt: skip


def _rows(case: Case, chosen: tuple[Rival, ...], figure: Callable[[Facts], Range | None]) -> tuple[Row, ...]:
    found = [(rival, figure(facts)) for rival, facts in zip(chosen, each(case, chosen), strict=True)]
    return tuple(
        Row(rival.label, rival.role, value, strong=rival.strong)
        for rival, value in found
        if value is not None
    )


def _hundredths(share: Range | None) -> Range | None:
    return None if share is None else share.scaled(100.0)
