"""The spool in section as it is drawn: true proportions, and the words of what is wound on it."""

from dataclasses import dataclass

from rigbuilder.reference.ranges import Range
from rigbuilder.review.engine import Report
from rigbuilder.review.questions.spool import Wound, section
from rigbuilder.review.speak import Speaker
from rigbuilder.units.dimensions import Dimension
from rigbuilder.viewmodels.scene import line_words


@dataclass(frozen=True, slots=True)
class WoundWords:
    """One length of line in words: what it is, how long, how many turns of the handle, how heavy."""

    name: str
    type: str
    length: str
    turns: str
    grams: str

    @property
    def spoken(self) -> str:
        """Return all of it in one sentence."""
        return f"{self.name}: {self.length}, {self.turns}, {self.grams}"


@dataclass(frozen=True, slots=True)
class SpoolShown:
    """The section [m] and its words."""

    width_m: float
    barrel_m: float
    core_m: float
    fill_m: float
    lip_m: float
    after_cast_m: float
    cast: str
    gap: str
    main: WoundWords
    backing: WoundWords | None

    @property
    def spoken(self) -> str:
        """Return the section in words."""
        lines = [self.main.spoken, *([self.backing.spoken] if self.backing else []), self.gap, self.cast]
        return ". ".join(lines) + "."


def spool_shown(report: Report, speaker: Speaker) -> SpoolShown:
    """Return the spool of a reviewed rig as it is drawn."""
    found, rig = section(report.case), report.case.rig
    backing = None
    if found.backing is not None and rig.backing is not None and found.backing.length_m.typical >= 1.0:
        backing = _words(line_words(rig.backing, speaker), "backing", found.backing, speaker)
    gap = found.gap_m.typical
    level = speaker.diameter(abs(gap))
    return SpoolShown(
        width_m=found.width_m, barrel_m=found.barrel_m, core_m=found.core_m, fill_m=found.fill_m,
        lip_m=found.lip_m, after_cast_m=found.after_cast_m,
        cast=f"level after a cast of {speaker.cast(found.cast_m)}",
        gap=f"{level} below the lip" if gap >= 0.0 else f"{level} over the lip",
        main=_words(line_words(rig.main, speaker), str(rig.main.type), found.main, speaker), backing=backing,
    )  # fmt: skip


def _words(name: str, kind: str, wound: Wound, speaker: Speaker) -> WoundWords:
    grams = wound.mass_kg.scaled(1000.0)
    return WoundWords(
        name=name, type=kind, length=speaker.spread(wound.length_m, Dimension.LENGTH, "line"),
        turns=f"{_plain(wound.turns)} turns of the handle", grams=f"{grams.typical:.2g} g",
    )  # fmt: skip


def _plain(value: Range) -> str:
    low, typical, high = (f"{number:.2g}" if number < 100 else f"{number:.0f}" for number in value)
    return typical if low == high else f"{typical} ({low}–{high})"
