"""Will the hook go home? The pull that reaches the hook, against the usual rig's at the same cast."""

from rigbuilder.model.rig import Rig
from rigbuilder.review.case import Case
from rigbuilder.review.figures import figures
from rigbuilder.review.figuring.usual import usual_rig
from rigbuilder.review.questions.answer import Answer, Limit, Question, Scale, Spot, curve_of, percent
from rigbuilder.review.questions.compare import rivals, swept
from rigbuilder.review.questions.distances import at_cast, cast_of, distances
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import FROM_MEMORY, Kind, Source
from rigbuilder.units.dimensions import Dimension

_SOURCES = (
    Source(
        Kind.COMPUTED, "tip travel less the line in sag and bow, times the stiffness of line, leader and rod"
    ),
    FROM_MEMORY,
)


def hook(case: Case, preview: Case | None = None) -> Answer:
    """Return the pull at the hook over the cast, in hundredths of the usual rig's at this cast."""
    cast, chosen = cast_of(case), rivals(case, preview)
    xs = distances(cast, longest=2.0 * cast)
    found = swept(case, chosen, xs, at_cast)
    usual = usual_pulls(case, xs, cast)
    curves = tuple(
        curve_of(
            rival.label, rival.role, xs,
            [facts.hook_share.scaled(100.0 * by) for facts, by in zip(row, usual, strict=True)],
            strong=rival.strong,
        )
        for rival, row in zip(chosen, found, strict=True)
    )  # fmt: skip
    share, force = case.facts.hook_share, case.facts.hook_force_n

    def sentence(speaker: Speaker) -> str:
        return (
            f"At {speaker.cast(cast)} a strike brings {percent(share)} of the usual rig's pull to the hook, "
            f"about {speaker.forces(force)}."
        )

    return Answer(
        Question.HOOK, sentence,
        Scale("pull at the hook, of the usual rig's at this cast", unit="%", low=0.0),
        x=Scale("line out", Dimension.LENGTH, "cast"), curves=curves,
        limits=(Limit(100.0, lambda _: "the usual rig at this cast"),),
        spots=(Spot(cast, 100.0 * share.typical, lambda s: f"{percent(share)} at {s.cast(cast)}"),),
        working=(
            "A sweep of the rod takes up the line that lies slack, in sag and bow; "
            "what is left of the travel "
            "stretches line, leader and rod, and their stiffness turns it into a pull. The drag and the arms "
            "set its upper end.",
            "Both rigs strike with the same arms on the same day, so their ratio is surer than either pull.",
        ),
        sources=_SOURCES,
    )  # fmt: skip


def usual_pulls(case: Case, xs: tuple[float, ...], cast: float) -> list[float]:
    """Return the usual rig's typical pull at each distance, as a share of its pull at this cast."""
    rig: Rig = usual_rig(case.technique.id, case.reference).with_(water=case.rig.water, fish=case.rig.fish)
    rigs = [rig.with_(cast_m=x) for x in (*xs, cast)]
    found = figures(rigs, [case.technique] * len(rigs), case.reference)
    *pulls, here = (facts.hook_force_n.typical for facts in found)
    return [pull / max(here, 1e-6) for pull in pulls]
