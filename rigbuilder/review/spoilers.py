"""Ways to spoil a right rig: families of small changes of the card, each a function of the rig's case.

A family only proposes; ``spoil`` keeps the proposal that makes the meant rule
speak and brings up no fault of another kind.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from rigbuilder.model.rig import Line
from rigbuilder.reference.ranges import LBF_N, OZ_KG
from rigbuilder.reference.words import Action, Cover, LineType, Power, ReelKind
from rigbuilder.review.case import Case
from rigbuilder.review.dressing import dressed, dressing_changes, line_changes, pounds
from rigbuilder.review.offered import tests_lb

Changes = Mapping[str, Any]
Family = Callable[[Case], Iterable[Changes]]

_SHARES = (0.1, 0.2, 0.35, 0.5, 1.4, 1.7, 2.0, 2.5, 3.0, 4.0, 6.0)


def other_tests(case: Case) -> Iterable[Changes]:
    """Other tests of the same type, alone and with what practice hangs on them."""
    for test in tests_lb().get(case.main.type, ()):
        line = Line(type=case.main.type, test_n=test * LBF_N, length_m=case.main.length_m)
        yield from _lines(case, line)


def other_types(case: Case) -> Iterable[Changes]:
    """Other types of line, in a test of practice's or one like the present."""
    for kind in tests_lb():
        if kind is case.main.type:
            continue
        aim = case.aim.for_type(kind)
        wish = aim.aim_lb if aim else case.main_n / LBF_N
        test = min(tests_lb()[kind], key=lambda step: abs(step - wish))
        yield from _lines(case, Line(type=kind, test_n=test * LBF_N, length_m=case.main.length_m))


def _lines(case: Case, line: Line) -> Iterable[Changes]:
    alone = line_changes(case.rig, line)
    whole = alone | dressing_changes(case.rig, dressed(case.rig, line, case.technique, case.reference))
    yield whole
    yield alone


def conditions_of_line(case: Case) -> Iterable[Changes]:
    """A kinked or worn line or leader."""
    for word in ("kinked", "worn"):
        yield {"main.condition": word}
        if case.leader is not None:
            yield {"leader.condition": word}


def odd_diameter(case: Case) -> Iterable[Changes]:
    """A printed diameter that cannot be."""
    now = case.facts.main_diameter_m.typical * 1000
    for share in (0.4, 0.5, 2.2, 3.0):
        yield {"main.diameter": f"{now * share:.3f} mm"}


def leaders(case: Case) -> Iterable[Changes]:
    """No leader, or another test, length, material or joint."""
    if case.leader is None:
        for kind, test in ((LineType.WIRE, 30.0), (LineType.FLUOROCARBON, 20.0), (LineType.NYLON, 25.0)):
            yield {
                "leader.type": str(kind), "leader.test": f"{test:g} lb", "leader.length": "24 in",
                "leader.knot": None if kind is LineType.WIRE else "double uni",
            }  # fmt: skip
        return
    yield {"leader": None}
    yield {"leader": None, "knots.lure": "double palomar" if case.is_braided() else "uni"}
    for step in case.reference.ladders.leader_lb:
        yield {"leader.test": f"{step:g} lb", "leader.diameter": None}
    for inches in (4, 12, 18, 36, 72, 144, 240):
        yield {"leader.length": f"{inches} in"}
    for kind in (LineType.NYLON, LineType.FLUOROCARBON, LineType.WIRE):
        yield {"leader.type": str(kind), "leader.diameter": None}
        yield {"leader.type": str(kind), "leader.diameter": None, "leader.length": "60 in"}


def joints(case: Case) -> Iterable[Changes]:
    """Another joint, also on a leader longer than the rod."""
    if case.leader is not None:
        for knot in ("blood", "surgeon's join", "improved clinch", "fg", "albright", "loop-to-loop"):
            yield {"leader.knot": knot}
            yield {"leader.knot": knot, "leader.length": "144 in"}
        for length in ("120 in", "144 in"):
            yield {"leader.knot": "uni", "hardware.swivel": "50 lb", "leader.length": length}
    if case.rig.backing is not None:
        for name in ("palomar", "blood", "double uni"):
            yield {"backing.knot": name}


def lure_knots(case: Case) -> Iterable[Changes]:
    """Every knot that may be tied to a lure."""
    for name in case.reference.knots:
        yield {"knots.lure": name}


def drags(case: Case) -> Iterable[Changes]:
    """Drags far below and far above the one set."""
    now = case.rig.drag_n or 0.25 * case.weakest_label_n
    for share in _SHARES:
        yield {"drag": pounds(now * share)}
    for share in (0.3, 0.5, 0.8):
        yield {"reel.drag": pounds(now * share)}


def rods(case: Case) -> Iterable[Changes]:
    """Another power, action, line range or lure range on the rod."""
    rod = case.rig.rod
    for power in Power:
        yield {"rod.power": str(power)}
    for action in Action:
        yield {"rod.action": str(action)}
    for share in (0.3, 0.45, 0.6, 0.8, 1.3, 1.6, 2.2, 3.0):
        if rod.line_n is not None:
            low, high = (end * share / LBF_N for end in rod.line_n)
            yield {"rod.line": f"{low:.0f}-{high:.0f} lb"} if low >= 1.5 else {"rod.line": f"1-{high:.0f} lb"}
        if rod.lure_kg is not None:
            low, high = (end * share / OZ_KG for end in rod.lure_kg)
            yield {"rod.lure": f"{low:.3f}-{high:.3f} oz"}


def stiff_rod_on_braid(case: Case) -> Iterable[Changes]:
    """Braid and a stiff fast rod where trebles want some give."""
    for power in (Power.HEAVY, Power.EXTRA_HEAVY):
        for test in (15, 30, 40):
            line = Line(type=LineType.BRAID, test_n=test * LBF_N, length_m=case.main.length_m)
            for changes in _lines(case, line):
                yield {**changes, "rod.power": str(power), "rod.action": "fast"}


def lures(case: Case) -> Iterable[Changes]:
    """A lighter or heavier lure, a trailer, another hook."""
    for share in (0.1, 0.25, 0.5, 1.5, 2.0, 3.0, 5.0):
        yield {"lure.weight": f"{case.rig.lure.weight_kg * share / OZ_KG:.3f} oz"}
    for hook in ("#14", "8/0", "10/0", "1 light wire", "2/0 heavy wire"):
        yield {"lure.hook": hook}


def heavy_lures(case: Case) -> Iterable[Changes]:
    """A lure that the rod throws but the line does not."""
    for ounces in (1.75, 2.5, 4.0, 6.0):
        for test in (6, 8, 10, 12, 20, 30):
            yield {"lure.weight": f"{ounces} oz", "rod.lure": "1/4-8 oz", "main.test": f"{test} lb"}


def reels(case: Case) -> Iterable[Changes]:
    """Another kind, size or gear of reel."""
    for size in ("500", "1000", "2500"):
        yield {"reel.kind": str(ReelKind.SPINNING), "reel.label": None, "reel.size": size}
    for size in ("100", "150"):
        yield {"reel.kind": str(ReelKind.BAITCASTING), "reel.label": None, "reel.size": size}
    for ratio in ("3.5:1", "4.5:1", "9.5:1", "11:1"):
        yield {"reel.ratio": ratio}


def fillings(case: Case) -> Iterable[Changes]:
    """Too little line, too much, no backing or the wrong one."""
    cast = case.rig.cast_m or case.technique.distance_m.middle
    for share in (0.6, 1.0, 1.2, 1.3):
        yield {"main.length": f"{cast * share:.0f} m"}
        yield {"main.length": f"{cast * share:.0f} m", "backing": None}
    yield {"main.length": "600 yd"}
    yield {"main.length": "1200 yd"}
    yield {"backing": None}
    yield {"backing.type": "lead-core", "backing.test": "18 lb"}
    for test in (20, 30, 40, 60):
        yield {"backing.type": "nylon", "backing.test": f"{test} lb", "backing.knot": "double uni"}


def hardware(case: Case) -> Iterable[Changes]:
    """Weak, strong, missing or needless hardware."""
    end = case.end.test_n or case.main_n
    for share in (0.3, 0.6, 1.5, 9.0, 15.0):
        yield {"hardware.swivel": pounds(end * share)}
        yield {"hardware.snap": pounds(end * share)}
        yield {"hardware.swivel": pounds(end * share), "hardware.snap": pounds(end * share)}
    yield {"hardware.swivel": None}
    yield {"hardware.swivel": None, "hardware.snap": None}


def frosts(case: Case) -> Iterable[Changes]:
    """Braid in frost."""
    frost = {"water.air": "-5 C"}
    if case.is_braided():
        yield frost
        return
    aim = case.aim.for_type(LineType.BRAID)
    line = Line(
        type=LineType.BRAID, test_n=(aim.aim_lb if aim else 30.0) * LBF_N, length_m=case.main.length_m
    )
    for changes in _lines(case, line):
        yield {**changes, **frost}


def waters(case: Case) -> Iterable[Changes]:
    """Another water: cover, clarity, depth, cold, pressure, teeth, bank, cast, fish."""
    for cover in Cover:
        yield {"water.cover": str(cover)}
        yield {"water.cover": str(cover), "cast": "40 m"}
    for clarity in ("0.2 m", "0.6 m", "4 m"):
        yield {"water.clarity": clarity, "water.pressure": "high"}
        yield {"water.clarity": clarity, "leader": None}
    for path, value in (
        ("water.depth", "14 m"), ("water.temperature", "4 C"), ("water.air", "-5 C"),
        ("fish.teeth", "present"), ("cast", "8 m"), ("cast", "45 m"), ("water.wind", "strong"),
    ):  # fmt: skip
        yield {path: value}
    for share in (0.2, 3.0, 6.0, 15.0):
        mass = case.technique.fish_kg.middle * share
        yield {"fish.weight": f"{mass:.2f} kg"}
        yield {"fish.weight": f"{mass:.2f} kg", "from": "shore"}
    for word in ("floating", "sinking", "finesse", "heavy cover"):
        yield {"presentation": word}


def logs(case: Case) -> Iterable[Changes]:
    """A log that tells of age, damage, or knots tied again."""
    filled = {"on": "2022-03-01", "what": "filled"}
    yield {"log": [filled, {"on": "2026-05-01", "what": "retied"}]}
    yield {"log": [filled, {"on": "2022-03-02", "what": "kink found"}]}
    yield {"log": [filled] + [{"on": "2022-03-02", "what": "retied"}] * 8}


def silencings(case: Case) -> Iterable[Changes]:
    """A rule silenced that has nothing to say."""
    yield {"silenced": [{"rule": "line-kinked", "why": "left over"}]}
