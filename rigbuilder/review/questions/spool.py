"""What fills the spool? The section of the spool to scale, and what is wound on it."""

from dataclasses import dataclass

from rigbuilder.reference.ranges import Range
from rigbuilder.review.case import Case
from rigbuilder.review.questions.answer import Answer, Question, Row, Scale
from rigbuilder.review.questions.compare import each, rivals
from rigbuilder.review.questions.distances import cast_of
from rigbuilder.review.questions.rows import batch_of
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import FROM_MEMORY, Kind, Source
from rigbuilder.units.dimensions import Dimension

_SOURCES = (
    Source(Kind.COMPUTED, "room by the reel's label: length times diameter squared; layers up to the lip"),
    Source(
        Kind.PRACTICE, "lip gap of a full spool; line to wind beyond the cast and for a season's trimming"
    ),
    FROM_MEMORY,
)


@dataclass(frozen=True, slots=True)
class Wound:
    """One length of line on the spool: metres, turns of the handle, kilograms."""

    length_m: Range
    turns: Range
    mass_kg: Range


@dataclass(frozen=True, slots=True)
class Spool:
    """The spool in section [m]: diameters of bare spool, joint, level and lip, and the level after a cast."""

    width_m: float
    barrel_m: float
    core_m: float
    fill_m: float
    lip_m: float
    after_cast_m: float
    cast_m: float
    main: Wound
    backing: Wound | None
    gap_m: Range
    holds_m: Range


def section(case: Case) -> Spool:
    """Return the spool of a rig in section; lengths, turns and grams are the review's own figures."""
    batch, row = batch_of(case)
    facts, given = case.facts, batch.rows.given
    barrel, lip = float(given["barrel_m"][1, row]), float(given["flange_m"][1, row])
    core, fill = (float(batch.triple(name)[1, row]) for name in ("core_diameter_m", "fill_diameter_m"))
    cast = cast_of(case)
    wound = max(facts.main_wound_m.typical, 1e-6)
    # Room is used evenly: the level falls as the square of the diameter.
    out = min(cast / wound, 1.0)
    after = (fill**2 - (fill**2 - core**2) * out) ** 0.5
    backing = None
    if facts.backing_m is not None and facts.backing_turns is not None and facts.backing_mass_kg is not None:
        backing = Wound(facts.backing_m, facts.backing_turns, facts.backing_mass_kg)
    return Spool(
        width_m=_width(case), barrel_m=barrel, core_m=core, fill_m=fill, lip_m=lip,
        after_cast_m=after, cast_m=cast,
        main=Wound(facts.main_wound_m, facts.main_turns, facts.main_mass_kg), backing=backing,
        gap_m=facts.lip_gap_m, holds_m=facts.spool_holds_m,
    )  # fmt: skip


def spool(case: Case, preview: Case | None = None) -> Answer:
    """Return how much of each line the spool holds [m] beside what is wound on it."""
    chosen = rivals(case, preview)
    rows = tuple(
        Row(rival.label, rival.role, facts.spool_holds_m, strong=rival.strong)
        for rival, facts in zip(chosen, each(case, chosen), strict=True)
    )
    wound, under, gap = case.facts.main_wound_m, case.facts.backing_m, case.facts.lip_gap_m

    def sentence(speaker: Speaker) -> str:
        text = f"{speaker.line(wound.typical)} of line"
        if under is not None and under.typical >= 1.0:
            text += f" over {speaker.line(under.typical)} of backing"
        level = speaker.spread(Range.exactly(max(gap.typical, 0.0)), Dimension.LENGTH, "gap")
        if gap.typical < 0.0:
            return f"{text} would stand above the lip: wind on less."
        return f"{text} leaves a gap of {level} below the lip."

    return Answer(
        Question.SPOOL, sentence, Scale("the spool holds", Dimension.LENGTH, "line"), rows=rows,
        working=(
            "The reel's label says how much of one line fills it; that is its room. Every metre of another "
            "line takes up its diameter squared. What the line does not fill, backing does.",
            "A turn of the handle winds the gear ratio times the circumference at the level reached.",
        ),
        sources=_SOURCES,
    )  # fmt: skip


def _width(case: Case) -> float:
    digits = "".join(letter for letter in case.rig.reel.size or "" if letter.isdigit())
    usual = case.technique.reel.sizes.get(case.rig.reel.kind)
    size = float(digits) if digits else (usual.middle if usual else 150.0)
    return case.reference.reel(case.rig.reel.kind, size).width_m.typical
