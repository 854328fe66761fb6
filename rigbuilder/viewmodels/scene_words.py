"""What the parts of the drawing say: a short label beside each, and a full sentence for those who listen."""

from collections.abc import Mapping
from typing import Protocol

from rigbuilder.model.fields import Part
from rigbuilder.model.rig import Leader, Line
from rigbuilder.reference.ranges import Range
from rigbuilder.review.case import Case
from rigbuilder.review.questions.profile import Profile, Way
from rigbuilder.review.questions.rows import batch_of
from rigbuilder.review.speak import Speaker
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.systems import show_si
from rigbuilder.viewmodels.pins import part_words

MOST_BENT = 0.4  # travel of a rod's tip over its length, at most, from memory: past it springs bend otherwise


class _Pinned(Protocol):
    @property
    def part(self) -> Part: ...
    @property
    def severity(self) -> str: ...
    @property
    def headline(self) -> str: ...


Texts = dict[Part, str]


def part_texts(
    case: Case, shape: Profile, speaker: Speaker, pins: Mapping[int, _Pinned]
) -> tuple[Texts, Texts]:
    """Return short labels and spoken sentences of every part that the rig has."""
    labels: Texts = {
        Part.LURE: f"{case.technique.name} {speaker.lure(case.rig.lure.total_kg)}",
        Part.ROD: _rod(case, speaker),
        Part.REEL: _reel(case, speaker),
        Part.MAIN: _line(case.main, speaker),
        Part.BACKING: "no backing" if case.rig.backing is None else _line(case.rig.backing, speaker),
        Part.LEADER: "no leader" if case.leader is None else _leader(case.leader, speaker),
        Part.KNOTS: _knots(case),
        Part.DRAG: _drag(case, speaker),
        Part.WATER: _water(case, speaker),
    }
    more = _more(case, shape, speaker)
    spoken = {}
    for part, label in labels.items():
        said = [f"{part_words(part)}: {label}", *([more[part]] if more.get(part) else [])]
        said += [f"{n}, {pin.severity}: {pin.headline}" for n, pin in pins.items() if pin.part is part]
        spoken[part] = ". ".join(said) + "."
    return labels, spoken


def measure_words(case: Case, shape: Profile, speaker: Speaker) -> Mapping[str, str]:
    """Return the lengths that are written on the drawing: cast, depth, clarity, where the lure runs."""
    batch, row = batch_of(case)
    given = batch.rows.given
    depth = case.facts.depth_m
    runs = speaker.depth(shape.depth_m) if depth is None else speaker.spread(depth, Dimension.LENGTH, "depth")
    return {
        "cast": speaker.cast(_cast(case)),
        "deep": speaker.depth(float(given["water_depth_m"][1, row])),
        "clear": speaker.depth(float(given["clarity_m"][1, row])),
        "runs": runs,
    }


def depth_words(case: Case, shape: Profile, speaker: Speaker) -> str:
    """Return how deep the lure is, with its range."""
    depth = case.facts.depth_m
    if depth is not None:
        return f"runs at {speaker.spread(depth, Dimension.LENGTH, 'depth')}"
    if shape.way is Way.RESTING:
        return "on the surface"
    return f"at {speaker.depth(shape.depth_m)}"


def _line(line: Line, speaker: Speaker) -> str:
    test = "" if line.test_n is None else f" {speaker.test(line.test_n)}"
    return f"{line.type}{test}"


def _rod(case: Case, speaker: Speaker) -> str:
    rod = case.rig.rod
    words = (
        [] if rod.length_m is None else [show_si(rod.length_m, Dimension.LENGTH, speaker.system, kind="rod")]
    )
    words += [str(word) for word in (rod.power, rod.action) if word]
    label = " ".join(words) or "rod"
    return label if rod.line_n is None else f"{label}, {speaker.tests(rod.line_n)}"


def _reel(case: Case, speaker: Speaker) -> str:
    facts = case.facts
    wound = "line" if case.rig.main.length_m is None else speaker.line(facts.main_wound_m.typical)
    if facts.backing_m is not None and facts.backing_m.typical >= 1.0:
        return f"{wound} over backing"
    return "no backing" if wound == "line" else f"{wound} of line"


def _leader(leader: Leader, speaker: Speaker) -> str:
    length = "" if leader.length_m is None else f", {speaker.leader(leader.length_m)}"
    return _line(leader, speaker) + length


def _knots(case: Case) -> str:
    names = [case.rig.knots.lure or "knot not said"]
    if case.leader is not None and case.leader.knot:
        names.append(case.leader.knot)
    return ", ".join(names)


def _drag(case: Case, speaker: Speaker) -> str:
    return "drag not set" if case.rig.drag_n is None else f"drag {speaker.force(case.rig.drag_n)}"


def _water(case: Case, speaker: Speaker) -> str:
    water = case.rig.water
    words = [] if water.depth_m is None else [f"{speaker.depth(water.depth_m)} deep"]
    words += [] if water.clarity_m is None else [f"clear to {speaker.depth(water.clarity_m)}"]
    return ", ".join([*words, str(water.cover or "open water")])


def _more(case: Case, shape: Profile, speaker: Speaker) -> Texts:
    facts, weakest = case.facts, case.facts.weakest
    level = Range.exactly(max(facts.lip_gap_m.typical, 0.0))
    more: Texts = {
        Part.LURE: depth_words(case, shape, speaker),
        Part.MAIN: f"the line is {speaker.diameter(facts.main_diameter_m.typical)} thick and breaks at "
        f"{speaker.forces(facts.main_straight_n)}; a cast of {speaker.cast(_cast(case))}",
        Part.REEL: f"the level stands {speaker.spread(level, Dimension.LENGTH, 'gap')} below the lip",
        Part.KNOTS: f"{weakest.name} goes first, at {speaker.forces(weakest.strength_n)}",
    }
    nose = facts.nose_share
    if nose is not None:
        more[Part.LURE] += f"; the line pulls at its nose with {_percent(nose)} of its weight"
    if facts.drag_on_scale_n is not None:
        more[Part.DRAG] = f"over the bent rod {speaker.forces(facts.drag_on_scale_n)}"
        more[Part.ROD] = f"the set drag draws its tip down by about {speaker.depth(drag_bend_m(case))}"
    return more


def drag_bend_m(case: Case) -> float:
    """Return how far the set drag draws the tip of the rod down [m], 0 where no drag is said."""
    batch, row = batch_of(case)
    given, drag = batch.rows.given, case.facts.drag_n
    if drag is None:
        return 0.0
    stiffness, length = (float(given[name][1, row]) for name in ("rod_stiffness_n_m", "rod_length_m"))
    return min(drag.typical / stiffness, MOST_BENT * length)


def _cast(case: Case) -> float:
    return case.rig.cast_m or case.technique.distance_m.middle


def _percent(share: Range) -> str:
    low, typical, high = (f"{100 * value:.0f}" for value in share)
    return f"{typical} %" if low == high else f"{typical} % ({low}–{high})"
