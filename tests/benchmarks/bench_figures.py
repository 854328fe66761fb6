"""150 candidate lines: time for all their figures, and for depths against a plain loop of an integrator.

Run: python -m tests.benchmarks.bench_figures [ROUNDS]
"""

import statistics
import sys
import time
from collections.abc import Callable
from functools import partial

import numpy as np
from scipy.integrate import solve_ivp

from rigbuilder.mechanics import cylinder
from rigbuilder.mechanics.arrays import STANDARD_GRAVITY_M_S2
from rigbuilder.model.rig import Line, Rig
from rigbuilder.reference.load import load
from rigbuilder.reference.ranges import LBF_N
from rigbuilder.reference.words import LineType
from rigbuilder.review.facts import Facts
from rigbuilder.review.figures import figures
from rigbuilder.review.figuring.batch import GROUPS, Batch
from rigbuilder.review.figuring.rows import Rows
from rigbuilder.review.figuring.towing import pulls, towing
from rigbuilder.review.figuring.usual import usual_rig

COUNT = 150
TECHNIQUES = ("frog", "drop-shot", "spinnerbait", "deep-diver")
LOOPED = "spinnerbait"
TYPES = (LineType.NYLON, LineType.COPOLYMER, LineType.FLUOROCARBON, LineType.BRAID)
TARGET_MS, TARGET_RATIO, TARGET_DIFFERENCE = 8.0, 200.0, 1e-3
REFERENCE = load()


def candidates(technique: str) -> list[Rig]:
    """Return 150 lines of all types and tests on the usual rig of a technique."""
    rig = usual_rig(technique, REFERENCE)
    tests = np.geomspace(3.0, 60.0, COUNT // len(TYPES) + 1)
    lines = [Line(type=kind, test_n=float(test) * LBF_N, length_m=110.0) for kind in TYPES for test in tests]
    return [rig.with_(main=line) for line in lines[:COUNT]]


def batch(rigs: list[Rig]) -> Batch:
    """Return the figures of rigs, not yet computed."""
    return Batch(rigs, [REFERENCE.techniques[rig.technique] for rig in rigs], REFERENCE, {})


def timed(work: Callable[[], object], rounds: int) -> float:
    """Return the median time of some work [ms]."""
    work()
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return 1e3 * statistics.median(times)


# What only the question panes draw: how far, how deep, how visible.
DRAWN = {"cast_distance_m", "cast_share", "depth_m", "layback_m", "drop_s", "glint_ratio", "sight_m"}


def compute(rigs: list[Rig], *, drawn: bool) -> list[Facts]:
    """Compute the figures of every rig, with or without those that only panes draw."""
    found = figures(rigs, [REFERENCE.techniques[rig.technique] for rig in rigs], REFERENCE)
    for name in Facts.names():
        if drawn or name not in DRAWN:
            found[0].columns.value(name, 0)
    return found


def looped_depth(rows: Rows, row: int) -> float:
    """Depth of one candidate by an adaptive integrator of the plain cable equations (rtol 1e-6)."""
    down, back = (float(pull[0]) for pull in pulls(rows, np.array([row])))
    diameter, speed = float(rows.main.diameter_m[1, row]), float(rows.given["speed_mps"][1, row])
    density, viscosity = float(rows.water_density[row]), float(rows.water_viscosity[row])
    wet, tip = float(rows.wet_weight_n_m[1, row]), float(rows.given["tip_height_m"][1, row])
    dry = float(rows.main.mass_kg_m[1, row]) * STANDARD_GRAVITY_M_S2
    length = max(float(rows.given["cast_m"][1, row]), tip + 1.0)
    water = {
        "speed_m_s": speed, "diameter_m": diameter, "density_kg_m3": density, "viscosity_pa_s": viscosity
    }  # fmt: skip

    def slope(_: float, state: list[float]) -> list[float]:
        level, up = state[0], state[1]
        angle = np.arctan2(up, level)
        across = float(cylinder.normal_force(angle_rad=angle, **water))
        along = float(cylinder.tangential_force(angle_rad=angle, **water))
        cosine, sine = np.cos(angle), np.sin(angle)
        return [along * cosine + across * sine, wet + along * sine - across * cosine, cosine, sine]

    def surface(arc: float, state: list[float]) -> float:
        tension, gained = float(np.hypot(state[0], state[1])), dry * tip
        at_tip = np.sqrt(state[1] ** 2 + gained * (2.0 * tension + gained))
        return float(arc + tip * (2.0 * tension + gained) / (at_tip + state[1]) - length)

    surface.terminal = True  # type: ignore[attr-defined]
    found = solve_ivp(slope, (0.0, length), [back, down, 0.0, 0.0], events=surface, rtol=1e-6, atol=1e-9)
    return float(max(found.y[3, -1], found.y[3].max()))


def main() -> None:
    """Print the table."""
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 40
    for technique in TECHNIQUES:
        rigs = candidates(technique)
        whole, part = (timed(partial(compute, rigs, drawn=drawn), rounds) for drawn in (True, False))
        print(
            f"{technique:12s} {COUNT} candidates: all figures {whole:6.2f} ms, "
            f"without those of the panes {part:6.2f} ms (target {TARGET_MS:g} ms)"
        )
    groups(candidates(LOOPED), rounds)
    rigs = candidates(LOOPED)
    ready = batch(rigs)
    ready.compute_all()
    quick = timed(lambda: towing(ready.rows, ready.triple), rounds)
    start = time.perf_counter()
    looped = np.array([looped_depth(ready.rows, row) for row in range(COUNT)])
    plain = 1e3 * (time.perf_counter() - start)
    apart = float(np.abs(ready.triple("depth_m")[1, :COUNT] / looped - 1.0).max())
    print(
        f"depths, low / typical / high, of {COUNT}: {quick:.2f} ms; typical by a plain loop: {plain:.0f} ms"
    )
    print(f"ratio {plain / quick:.0f} (target {TARGET_RATIO:g}), largest difference {100 * apart:.3f} %")


def groups(rigs: list[Rig], rounds: int) -> None:
    """Print what each group costs."""
    times: dict[str, list[float]] = {}
    for _ in range(rounds):
        new = batch(rigs)
        start = time.perf_counter()
        assert new.rows.given
        assert new.rows.main
        times.setdefault("shared", []).append(time.perf_counter() - start)
        for group, names in GROUPS.items():
            start = time.perf_counter()
            new.triple(names[0])
            times.setdefault(group.__name__, []).append(time.perf_counter() - start)
    print("  " + ", ".join(f"{name} {1e3 * statistics.median(took):.2f}" for name, took in times.items()))


if __name__ == "__main__":
    main()
