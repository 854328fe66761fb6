"""Will you feel it? What of a tug at the lure reaches the hand, over the length of line."""

from rigbuilder.review.case import Case
from rigbuilder.review.questions.answer import Answer, Question, Scale, Spot, curve_of, percent
from rigbuilder.review.questions.compare import rivals, swept
from rigbuilder.review.questions.distances import at_cast, cast_of, distances
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import FROM_MEMORY, Kind, Source
from rigbuilder.units.dimensions import Dimension

_SOURCES = (
    Source(Kind.COMPUTED, "stretch and sag of the line in series with the rod's tip"),
    FROM_MEMORY,
)


def feel(case: Case, preview: Case | None = None) -> Answer:
    """Return the share of a tug that reaches the rod [%] over the length of line out [m]."""
    length, chosen = cast_of(case), rivals(case, preview)
    xs = distances(length, longest=2.0 * length)
    found = swept(case, chosen, xs, at_cast)
    curves = tuple(
        curve_of(
            rival.label, rival.role, xs, [facts.tug_share.scaled(100.0) for facts in row], strong=rival.strong
        )
        for rival, row in zip(chosen, found, strict=True)
    )
    share = case.facts.tug_share

    def sentence(speaker: Speaker) -> str:
        out = speaker.cast(length)
        return f"Of a short tug at the lure {percent(share)} moves the rod tip with {out} of line out."

    return Answer(
        Question.FEEL, sentence, Scale("share of a tug that moves the tip", unit="%", low=0.0),
        x=Scale("line out", Dimension.LENGTH, "cast"), curves=curves,
        spots=(Spot(length, 100.0 * share.typical, lambda s: f"{percent(share)} at {s.cast(length)}"),),
        working=(
            "A tug first straightens the sag and stretches the line; only what is "
            "left moves the rod tip. Stiff, "
            "light line kept tight passes on most.",
        ),
        sources=_SOURCES,
    )  # fmt: skip
