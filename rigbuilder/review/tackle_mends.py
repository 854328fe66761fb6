"""Ways to mend what is not line: rod, reel, hook, hardware, spool. As in ``mends``, they only propose."""

from rigbuilder.model import practice
from rigbuilder.model.document import get
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.ranges import INCH_M, LBF_N, OZ_KG, YARD_M, Span
from rigbuilder.reference.words import LineType
from rigbuilder.review.case import Case
from rigbuilder.review.core import Remedy
from rigbuilder.review.dressing import Changes, backing_changes, pounds
from rigbuilder.review.figuring.usual import usual_rig

_STEP_YD = 5  # line is wound on by the five yards
_HARDWARE_LB = (10, 20, 30, 50, 80, 100, 130, 200)  # common practice: strengths that swivels are sold in
_SPARE = 1.25  # common practice: hardware a quarter stronger than the line it hangs on


def _both(span: Span, unit: float, symbol: str) -> str:
    return f"{round(span.low / unit, 4):g}-{round(span.high / unit, 4):g} {symbol}"


def usual_rod(case: Case) -> tuple[Remedy, ...]:
    """Propose the rod of the technique's usual rig."""
    label, rod = (
        get(usual_document(case.technique.id), "rod.label"),
        usual_rig(case.technique.id, case.reference).rod,
    )
    if not label:
        return ()
    changes: Changes = {"rod.label": str(label)}
    if rod.length_m is not None:
        changes["rod.length"] = f"{round(rod.length_m / INCH_M, 1):g} in"
    if rod.power is not None:
        changes["rod.power"] = str(rod.power)
    if rod.action is not None:
        changes["rod.action"] = str(rod.action)
    if rod.line_n is not None:
        changes["rod.line"] = _both(rod.line_n, LBF_N, "lb")
    if rod.lure_kg is not None:
        changes["rod.lure"] = _both(rod.lure_kg, OZ_KG, "oz")
    if case.rig.says("rod.line_for"):
        changes["rod.line_for"] = "braid" if rod.line_for_braid else "nylon"
    return (Remedy(f"Take a rod marked {label}", changes),)


def usual_reel(case: Case) -> tuple[Remedy, ...]:
    """Propose the reel of the technique's usual rig."""
    document, reel = usual_document(case.technique.id), usual_rig(case.technique.id, case.reference).reel
    label, size = get(document, "reel.label"), get(document, "reel.size")
    if not label:
        return ()
    changes: Changes = {"reel.kind": str(reel.kind), "reel.label": str(label)}
    changes["reel.size"] = str(size) if size else None
    if reel.ratio is not None and case.rig.says("reel.ratio"):
        changes["reel.ratio"] = f"{reel.ratio:g}:1"
    if reel.drag_n is not None and case.rig.says("reel.drag"):
        changes["reel.drag"] = pounds(reel.drag_n)
    return (Remedy(f"Take a {reel.kind} reel marked {label}", changes),)


def usual_hook(case: Case) -> tuple[Remedy, ...]:
    """Propose the hook of the technique's usual rig."""
    hook = get(usual_document(case.technique.id), "lure.hook")
    return (Remedy(f"Fish it with a {hook} hook", {"lure.hook": str(hook)}),) if hook else ()


def usual_weight(case: Case) -> tuple[Remedy, ...]:
    """Propose the weight of lure on the technique's usual rig, with nothing hung on it."""
    weight = get(usual_document(case.technique.id), "lure.weight")
    changes: Changes = {"lure.weight": str(weight)}
    for path, mass in (("lure.trailer", case.rig.lure.trailer_kg), ("lure.sinker", case.rig.lure.sinker_kg)):
        if mass:
            changes[path] = None
    return (Remedy(f"Throw {weight} in all", changes),)


def stronger_hardware(case: Case) -> tuple[Remedy, ...]:
    """Propose swivel and snap of a strength that outdoes the line."""
    text = _hardware_text(case)
    changes: Changes = {}
    if case.rig.hardware.swivel_n is not None:
        changes["hardware.swivel"] = text
    if case.rig.hardware.snap_n is not None:
        changes["hardware.snap"] = text
    return (Remedy(f"Use hardware marked {text}", changes),) if changes else ()


def with_swivel(case: Case) -> tuple[Remedy, ...]:
    """Propose a swivel."""
    text = _hardware_text(case)
    return (Remedy(f"Put in a {text} ball-bearing swivel", {"hardware.swivel": text}),)


def with_snap(case: Case) -> tuple[Remedy, ...]:
    """Propose a snap."""
    text = _hardware_text(case)
    return (Remedy(f"Put on a {text} snap", {"hardware.snap": text}),)


def without_swivel(case: Case) -> tuple[Remedy, ...]:
    """Propose to leave swivel and snap off, or the swivel alone."""
    return (
        Remedy("Leave the swivel off and keep the snap", {"hardware.swivel": None}),
        Remedy("Leave swivel and snap off", {"hardware.swivel": None, "hardware.snap": None}),
    )


def _hardware_text(case: Case) -> str:
    wanted = _SPARE * (case.end.test_n or case.main_n) / LBF_N
    return f"{next((step for step in _HARDWARE_LB if step >= wanted), _HARDWARE_LB[-1])} lb"


def more_line(case: Case) -> tuple[Remedy, ...]:
    """Propose as much main line as the cast, a run and a season's trimming want."""
    return _line_length(case, case.facts.reach_m.typical, up=True)


def less_line(case: Case) -> tuple[Remedy, ...]:
    """Propose as much main line as the spool takes."""
    return _line_length(case, case.facts.spool_holds_m.low, up=False)


def _line_length(case: Case, length_m: float, *, up: bool) -> tuple[Remedy, ...]:
    yards = length_m / YARD_M
    steps = -(-yards // _STEP_YD) if up else yards // _STEP_YD
    if steps < 1:
        return ()
    text = f"{steps * _STEP_YD:g} yd"
    return (Remedy(f"Wind on {text} of main line", {"main.length": text}),)


def usual_backing(case: Case) -> tuple[Remedy, ...]:
    """Propose the backing that practice puts under the line."""
    backing = practice.backing_for(case.rig.reel.kind, LineType.BRAID)
    if backing is None:
        return ()
    changes = backing_changes(backing)
    thinner = tuple(
        Remedy(f"Back it with nylon {test} lb", {**changes, "backing.test": f"{test} lb"})
        for test in (8, 6, 4)
    )
    say = f"Back it with {backing.type} {pounds(backing.test_n or 0.0)}"
    return (Remedy(say, changes), *thinner)


def other_backing_knot(case: Case) -> tuple[Remedy, ...]:
    """Propose joints between backing and main line."""
    if case.rig.backing is None:
        return ()
    return tuple(
        Remedy(f"Join the backing with a {name} knot", {"backing.knot": name})
        for name in ("double uni", "albright")
        if name != case.rig.backing.knot
    )


def longer_leader(case: Case) -> tuple[Remedy, ...]:
    """Propose a leader with room for a day's knots."""
    leader, steps = case.leader, case.reference.ladders.leader_in
    if leader is None or leader.length_m is None:
        return ()
    now = leader.length_m / INCH_M
    return tuple(
        Remedy(f"Start the day with {step:g} in of leader", {"leader.length": f"{step:g} in"})
        for step in steps
        if step > now + 0.5
    )[:3]
