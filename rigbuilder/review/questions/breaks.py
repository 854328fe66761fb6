"""Where will it break? Every link from the hook upwards, what it bears, and what pulls at it."""

from rigbuilder.review.case import Case
from rigbuilder.review.questions.answer import Answer, Limit, Question, Row, Scale, Words
from rigbuilder.review.questions.compare import each, rivals
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import FROM_MEMORY, Kind, Source
from rigbuilder.units.dimensions import Dimension

_SOURCES = (
    Source(Kind.COMPUTED, "each link's strength as a range; of all links the one most likely to give first"),
    Source(Kind.PRACTICE, "share of strength that a knot leaves, from the knot table"),
    FROM_MEMORY,
)


def breaks(case: Case, preview: Case | None = None) -> Answer:
    """Return what every link bears [N], the whole chain with other lines, and the drag's pull."""
    facts, chosen = case.facts, rivals(case, preview)
    weakest = facts.weakest
    rows = [
        Row(_plain(link.name), "present", link.strength_n, strong=link == weakest)
        for link in reversed(facts.links)
    ]
    for rival, other in list(zip(chosen, each(case, chosen), strict=True))[1:]:
        rows.append(Row(_first_of(rival.label, other.weakest.name), rival.role, other.weakest.strength_n))
    limits = []
    if facts.drag_on_scale_n is not None:
        pull = facts.drag_on_scale_n.typical
        limits.append(Limit(pull, lambda speaker: f"drag over the bent rod {speaker.force(pull)}", axis="x"))

    def sentence(speaker: Speaker) -> str:
        said = f"The {weakest.name} goes first, at about {speaker.forces(weakest.strength_n)}."
        pulls = facts.drag_on_scale_n
        if pulls is not None:
            gives = pulls.typical < weakest.strength_n.low
            held = "gives line before that" if gives else "may not give line before that"
            said += f" The drag, {speaker.force(pulls.typical)} over the bent rod, {held}."
        return said

    return Answer(
        Question.BREAKS, sentence, Scale("bears", Dimension.FORCE, "drag"), rows=tuple(rows),
        limits=tuple(limits),
        working=(
            "Straight strength of the wet line times the share that its knot leaves; the printed test is "
            "corrected by what labels of this kind usually hold and by the state of the line.",
            f"This rig: {weakest.name} is the weakest in {100 * weakest.goes_first:.0f} of 100 chances.",
        ),
        sources=_SOURCES,
    )  # fmt: skip


def _plain(text: str) -> Words:
    return lambda _: text


def _first_of(line: Words, link: str) -> Words:
    return lambda speaker: f"{line(speaker)}: {link}"
