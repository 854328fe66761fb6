"""The rig as it is drawn: plain frozen values in SI units, with the words that go with them."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Line, Rig
from rigbuilder.reference.words import Action, Condition, Power
from rigbuilder.review.case import Case
from rigbuilder.review.engine import Report
from rigbuilder.review.questions.profile import Points, Way, profile
from rigbuilder.review.questions.rows import batch_of
from rigbuilder.review.speak import Speaker
from rigbuilder.units.systems import UnitSystem
from rigbuilder.viewmodels.pins import numbering
from rigbuilder.viewmodels.scene_words import MOST_BENT, drag_bend_m, measure_words, part_texts

_YARD_M = 0.9144  # exact
_ROD_LENGTHS = ("length_m", "bend_m", "drag_bend_m")
_ACTIONS = list(Action)
_POWERS = list(Power)


@dataclass(frozen=True, slots=True)
class Pin:
    """One numbered reason, pinned to its part."""

    part: Part
    number: int
    severity: str
    headline: str


@dataclass(frozen=True, slots=True)
class LineLook:
    """One length of line: type as the theme knows it, its words, its diameter [m], whether it has a kink."""

    type: str
    words: str
    diameter_m: float
    kinked: bool = False


@dataclass(frozen=True, slots=True)
class Section:
    """The spool in section: diameters [m] of bare spool, backing, line and lip."""

    barrel_m: float
    core_m: float
    fill_m: float
    lip_m: float
    spinning: bool


@dataclass(frozen=True, slots=True)
class RodLook:
    """The rod: length [m], where it bends and how stout it is (0 to 1).

    ``bend_m`` is the travel of its tip under the present pull, ``drag_bend_m`` that under the set drag [m].
    """

    length_m: float
    bend_m: float
    fast: float
    stout: float
    drag_bend_m: float = 0.0


@dataclass(frozen=True, slots=True)
class Surroundings:
    """The water: depth and clarity [m], cover as on the card, whether the angler stands on the shore."""

    depth_m: float
    clarity_m: float
    cover: str
    shore: bool


@dataclass(frozen=True, slots=True)
class LureLook:
    """The lure: class, weight [kg], how it lies (0 level, 1 nose straight down), whether it swims."""

    kind: str
    mass_kg: float
    nose_down: float
    moving: bool


@dataclass(frozen=True, slots=True)
class RigScene:
    """Everything that the drawing shows; shapes run from the rod tip to the lure, see ``Profile``."""

    way: Way
    typical: Points
    shallow: Points
    deep: Points
    cast_m: float
    leader_m: float
    rod: RodLook
    section: Section
    main: LineLook
    leader: LineLook | None
    backing: str
    lure: LureLook
    water: Surroundings
    pins: tuple[Pin, ...]
    labels: Mapping[Part, str]
    spoken: Mapping[Part, str]
    words: Mapping[str, str]
    unit: str
    unit_m: float
    title: str
    caption: str = ""

    @property
    def parts(self) -> tuple[Part, ...]:
        """The parts that the drawing shows, in reading order."""
        return tuple(part for part in Part if part in self.labels)

    def captioned(self, caption: str) -> "RigScene":
        """Return the same scene with a caption over it."""
        return replace(self, caption=caption)

    def pins_of(self, part: Part) -> tuple[Pin, ...]:
        """Return the pins of one part."""
        return tuple(pin for pin in self.pins if pin.part is part)

    def worst(self, part: Part) -> str:
        """Return the worst severity on a part, empty where there is no reason."""
        found = self.pins_of(part)
        return found[0].severity if found else ""


def scene_of(report: Report, speaker: Speaker, caption: str = "") -> RigScene:
    """Return the drawing of a reviewed rig in the units of the speaker."""
    case = report.case
    rig, shape = case.rig, profile(case)
    batch, row = batch_of(case)
    given = batch.rows.given
    numbers = numbering(report)
    pins = tuple(
        Pin(found.part, numbers[found.rule.name], found.severity.word, found.headline(speaker))
        for found in report.findings
    )
    labels, spoken = part_texts(case, shape, speaker, {pin.number: pin for pin in pins})
    metric = speaker.system is UnitSystem.METRIC
    return RigScene(
        way=shape.way, typical=shape.typical, shallow=shape.shallow, deep=shape.deep,
        cast_m=float(given["cast_m"][1, row]), leader_m=float(batch.rows.leader_m[1, row]),
        rod=_rod(case, shape.pull_n), section=_section(case),
        main=_line(rig.main, case.facts.main_diameter_m.typical, speaker),
        leader=_leader(case, speaker), backing=_backing(rig, speaker), lure=_lure(case, shape.way),
        water=Surroundings(
            depth_m=float(given["water_depth_m"][1, row]), clarity_m=float(given["clarity_m"][1, row]),
            cover=str(rig.water.cover or "open"), shore=rig.from_shore is not False,
        ),
        pins=pins, labels=labels, spoken=spoken,
        words=measure_words(case, shape, speaker), unit="m" if metric else "yd",
        unit_m=1.0 if metric else _YARD_M,
        title=rig.name, caption=caption,
    )  # fmt: skip


def line_words(line: Line, speaker: Speaker) -> str:
    """Return a line as people call it, such as ``braid 50 lb``."""
    if line.test_n is None:
        return str(line.type)
    return f"{line.type} {speaker.test(line.test_n)}"


def _line(line: Line, diameter_m: float, speaker: Speaker) -> LineLook:
    kinked = line.condition is Condition.KINKED
    return LineLook(str(line.type), line_words(line, speaker), diameter_m, kinked)


def _leader(case: Case, speaker: Speaker) -> LineLook | None:
    leader, across = case.rig.leader, case.facts.leader_diameter_m
    if leader is None or across is None:
        return None
    return _line(leader, across.typical, speaker)


def _backing(rig: Rig, speaker: Speaker) -> str:
    return "" if rig.backing is None else line_words(rig.backing, speaker)


def _rod(case: Case, pull_n: float) -> RodLook:
    batch, row = batch_of(case)
    given, rod = batch.rows.given, case.rig.rod
    length = float(given["rod_length_m"][1, row])
    stiffness = float(given["rod_stiffness_n_m"][1, row])
    action, power = rod.action or Action.FAST, rod.power or Power.MEDIUM
    return RodLook(
        length_m=length,
        bend_m=min(pull_n / stiffness, MOST_BENT * length),
        fast=_ACTIONS.index(action) / (len(_ACTIONS) - 1),
        stout=_POWERS.index(power) / (len(_POWERS) - 1),
        drag_bend_m=drag_bend_m(case),
    )


def _section(case: Case) -> Section:
    batch, row = batch_of(case)
    given = batch.rows.given
    typical = {name: float(batch.triple(name)[1, row]) for name in ("core_diameter_m", "fill_diameter_m")}
    return Section(
        barrel_m=float(given["barrel_m"][1, row]),
        core_m=typical["core_diameter_m"],
        fill_m=typical["fill_diameter_m"],
        lip_m=float(given["flange_m"][1, row]),
        spinning=case.rig.reel.kind == "spinning",
    )


def _lure(case: Case, way: Way) -> LureLook:
    share = case.facts.nose_share
    return LureLook(
        kind=case.technique.lure_class,
        mass_kg=case.rig.lure.total_kg,
        nose_down=0.0 if share is None else min(1.0, share.typical * 6.0),
        moving=way is Way.TOWED,
    )


def between(before: RigScene, after: RigScene, share: float) -> RigScene:
    """Return a scene on the way from one to another; words and kinds are the later ones' already."""
    if share >= 1.0:
        return after

    def mix(one: float, other: float) -> float:
        return one + (other - one) * share

    def shape(one: Points, other: Points) -> Points:
        if len(one) != len(other):
            return other
        return tuple((mix(x, u), mix(z, v)) for (x, z), (u, v) in zip(one, other, strict=True))

    def section(one: Section, other: Section) -> Section:
        return replace(
            other,
            barrel_m=mix(one.barrel_m, other.barrel_m), core_m=mix(one.core_m, other.core_m),
            fill_m=mix(one.fill_m, other.fill_m), lip_m=mix(one.lip_m, other.lip_m),
        )  # fmt: skip

    water = replace(
        after.water,
        depth_m=mix(before.water.depth_m, after.water.depth_m),
        clarity_m=mix(before.water.clarity_m, after.water.clarity_m),
    )
    rod = {name: mix(getattr(before.rod, name), getattr(after.rod, name)) for name in _ROD_LENGTHS}
    return replace(
        after,
        typical=shape(before.typical, after.typical),
        shallow=shape(before.shallow, after.shallow),
        deep=shape(before.deep, after.deep),
        cast_m=mix(before.cast_m, after.cast_m),
        leader_m=mix(before.leader_m, after.leader_m) if after.leader else after.leader_m,
        section=section(before.section, after.section),
        water=water,
        rod=replace(after.rod, **rod),
    )
