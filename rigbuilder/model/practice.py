"""What practice would put with a main line: leader, knots, backing and drag.

The line chart dresses every candidate with these, and whatever a card leaves
unsaid is assumed from them. Each value is common practice, from the shipped
tables; forces [N], lengths [m].
"""

import math
from collections.abc import Sequence

from rigbuilder.model.rig import Backing, Leader, Line, Reel, Rod
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.techniques import Technique
from rigbuilder.reference.words import HookClass, LeaderNeed, LineType, ReelKind

_WANTED = (LeaderNeed.USUAL, LeaderNeed.REQUIRED)
_CLINCH_NYLON_N = 15 * LBF_N  # common practice: the improved clinch seats in nylon up to 15-20 lb
_LARGE_TREBLES = (HookClass.HEAVY_TREBLE,)
# Common practice: 8-12 lb nylon backs a spinning reel, 12-20 lb a casting reel.
_BACKING_N = {ReelKind.SPINNING: 10 * LBF_N, ReelKind.BAITCASTING: 14 * LBF_N, ReelKind.SPINCAST: 10 * LBF_N}
_LOCKED_SHARE = 0.4  # common practice: 40-60 % of the weakest label where the drag is "locked"
# Common practice: half of a nylon label's top is the most a rod should feel; where it locks, a bit more.
ROD_SHARE, ROD_SHARE_LOCKED = 0.5, 0.6


def wants_leader(technique: Technique, main: LineType) -> bool:
    """Tell whether practice puts a leader on this main line for this technique."""
    return technique.leader.need_on(main) in _WANTED


def leader_for(technique: Technique, main: Line, reference: Reference) -> Leader | None:
    """Return the leader that practice joins to this main line, or ``None`` where it uses none."""
    if main.test_n is None or not wants_leader(technique, main.type):
        return None
    practice, base = technique.leader, technique.base
    material = base.leader or (practice.materials[0] if practice.materials else LineType.FLUOROCARBON)
    length = base.leader_m or (practice.length_m.middle if practice.length_m else 0.9)
    test_n = _leader_test_n(technique, main, reference)
    knot = joint_for(material, main, test_n)
    return Leader(type=material, test_n=test_n, length_m=length, knot=knot)


def _leader_test_n(technique: Technique, main: Line, reference: Reference) -> float:
    practice, base = technique.leader, technique.base
    assert main.test_n is not None  # noqa: S101 - checked by the caller
    main_n = main.test_n
    wish = base.leader_lb * LBF_N if base.leader_lb else None
    if wish is None:
        wish = practice.test_n.middle if practice.test_n else 0.8 * main_n
    if practice.stronger_than_main or wish <= main_n * (1.0 if main.type.is_braided else 0.9):
        return wish
    ladder = [step * LBF_N for step in reference.ladders.leader_lb]
    lighter = [step for step in ladder if step <= main_n * (1.0 if main.type.is_braided else 0.9)]
    return lighter[-1] if lighter else main_n


def joint_for(leader: LineType, main: Line, leader_test_n: float) -> str | None:
    """Return the knot that practice ties between main line and leader; wire and swivels need none."""
    if leader is LineType.WIRE:
        return None
    if main.type.is_braided:
        thick_enough = main.test_n is not None and leader_test_n >= 0.35 * main.test_n
        return "fg" if thick_enough else "double uni"
    return "double uni"


def lure_knot_for(technique: Technique, end: Line) -> str:
    """Return the knot that practice ties to the lure in the line that reaches it."""
    large = technique.hook_class in _LARGE_TREBLES
    if end.type is LineType.WIRE:
        return "crimped sleeve"
    if end.type.is_braided:
        return "uni" if large else "double palomar"
    if end.test_n is not None and end.test_n > 60 * LBF_N:
        return "crimped sleeve"
    if end.type is LineType.FLUOROCARBON:
        return "double-loop clinch"
    light = end.test_n is None or end.test_n <= _CLINCH_NYLON_N
    return "improved clinch" if light else "double-loop clinch"


def backing_for(kind: ReelKind, main: LineType) -> Backing | None:
    """Return the backing under this main line: nylon under braid, nothing under the rest."""
    if not main.is_braided:
        return None
    return Backing(type=LineType.NYLON, test_n=_BACKING_N[kind], knot="double uni")


def reel_for(
    technique: Technique, main: Line, reference: Reference, *, kinds: Sequence[ReelKind], usual: str | None
) -> tuple[ReelKind, str | None]:
    """Return the kind and size of reel that practice would wind this line on.

    Of ``kinds``, in order of use, the first that throws the line; ``usual`` is the size
    that the first of them usually has.
    """
    for kind in kinds:
        for size in _sizes(technique, kind, usual if kind is kinds[0] else None):
            if _throws(kind, size, technique, main, reference):
                return kind, size
    return kinds[0], next(iter(_sizes(technique, kinds[0], usual)), None)


def _sizes(technique: Technique, kind: ReelKind, usual: str | None) -> list[str]:
    span = technique.reel.sizes.get(kind)
    if span is None:
        return [usual] if usual else []
    step = 500 if kind is ReelKind.SPINNING else 50
    found = [f"{round(size / step) * step:g}" for size in (span.middle, span.high)]
    return [usual, found[1]] if usual else found


def _throws(kind: ReelKind, size: str, technique: Technique, main: Line, reference: Reference) -> bool:
    test_n = main.test_n or 0.0
    if kind is ReelKind.SPINNING:
        return (
            not size.isdecimal() or test_n <= reference.spinning_limit(float(size)).max_n(main.type) * 1.001
        )
    limits = reference.casting_limits
    least_lb = limits.braid_min_lb if main.type.is_braided else limits.nylon_min_lb
    return kind is ReelKind.SPINCAST or technique.trolled or test_n >= least_lb * LBF_N * 0.999


def weakest_test_n(main: Line, leader: Leader | None) -> float | None:
    """Return the smallest printed strength in the chain [N]."""
    tests = [line.test_n for line in (main, leader) if line is not None and line.test_n is not None]
    return min(tests) if tests else None


def rod_bears_n(technique: Technique, rod: Rod) -> float:
    """Return the most drag [N] that practice sets on a rod by its label; a braid label sets no limit."""
    if rod.line_n is None or rod.line_for_braid:
        return math.inf
    locked = technique.drag.percent is None
    return (ROD_SHARE_LOCKED if locked else ROD_SHARE) * rod.line_n.high


def reel_bears_n(reel: Reel, reference: Reference) -> float:
    """Return the most drag [N] that practice sets on a reel by its label."""
    if reel.drag_n is None:
        return math.inf
    return reel.drag_n * (reference.drag.limits.reel_share_smooth if reel.kind is ReelKind.SPINNING else 1.0)


def drag_for(technique: Technique, main: Line, leader: Leader | None, *, most_n: float) -> float | None:
    """Return the drag that practice sets on this chain [N]: a share of the weakest label.

    ``most_n`` is what rod and reel bear; practice never asks for more.
    """
    weakest = weakest_test_n(main, leader)
    if weakest is None:
        return None
    practice = technique.drag
    if practice.percent is None:
        wish = min(practice.drag_n.clamp(_LOCKED_SHARE * weakest), 0.5 * weakest)
    else:
        share = practice.percent
        wish = min(practice.drag_n.clamp(share.middle / 100 * weakest), share.high / 100 * weakest)
    return min(wish, most_n)
