"""How fast the line-shape integrator is, and how exact: run by hand.

    python -m tests.benchmarks.bench_shape

The same 150 candidate lines are towed by the vectorised integrator and, one by
one, by a plain scipy loop; the table shows both times of this run, their ratio
and how far the depths differ.
"""

import statistics
import time
from collections.abc import Callable

import numpy as np
from scipy.integrate import solve_ivp

from rigbuilder.mechanics import loads, shape, tow

CANDIDATES = 150
DENSITY, VISCOSITY, GRAVITY = 998.2072, 1.0016e-3, 9.80665
LENGTH_M, PULL_N, DRAG_N, TIP_M = 30.0, 0.08, 0.03, 1.5


def candidates() -> tuple[np.ndarray, np.ndarray]:
    """Diameters and densities of 150 lines as a line chart would ask for them."""
    diameter = np.tile(np.linspace(0.10e-3, 0.55e-3, CANDIDATES // 3), 3)
    density = np.repeat([970.0, 1140.0, 1780.0], CANDIDATES // 3)
    return diameter, density


def drag_coefficient(reynolds: float) -> float:
    """The lower of the fits of Sucker & Brauer and of Cheng, written out for scalars."""
    first = 1.18 + 6.8 / reynolds**0.89 + 1.96 / reynolds**0.5
    first -= 0.0004 * reynolds / (1.0 + 3.64e-7 * reynolds**2)
    second = 11.0 / reynolds**0.75 + 0.9 * (1.0 - np.exp(-1000.0 / reynolds))
    second += 1.2 * (1.0 - np.exp(-((reynolds / 4500.0) ** 0.7)))
    return float(min(first, second))


def nusselt(reynolds: float) -> float:
    """Churchill and Bernstein at Prandtl number 1, at least 0.5, written out for scalars."""
    across = 0.62 * reynolds**0.5 / (1.0 + 0.4 ** (2.0 / 3.0)) ** 0.25
    return float(max(0.5, 0.3 + across * (1.0 + (reynolds / 282000.0) ** 0.625) ** 0.8))


def plain_depth(diameter: float, density: float, speed: float, factor: float) -> float:
    """Depth of one lure by scipy's general integrator at rtol 1e-6, in the angle form of the equations."""
    weight = (density - DENSITY) * GRAVITY * np.pi / 4.0 * diameter**2

    def slope(_s: float, state: np.ndarray) -> list[float]:
        tension, angle = state[0], state[1]
        sine, cosine = np.sin(angle), np.cos(angle)
        reynolds = max(DENSITY * speed * abs(sine) * diameter / VISCOSITY, 1e-4)
        across = 0.5 * DENSITY * diameter * speed**2 * drag_coefficient(reynolds) * sine * abs(sine) * factor
        along = np.pi * VISCOSITY * speed * cosine * nusselt(reynolds)
        return [weight * sine + along, (weight * cosine - across) / tension, cosine, sine]

    start = [np.hypot(PULL_N, DRAG_N), np.arctan2(PULL_N, DRAG_N), 0.0, 0.0]
    return float(solve_ivp(slope, (0.0, LENGTH_M), start, rtol=1e-6, atol=1e-9).y[3, -1])


def median_ms(call: Callable[[], object], repeats: int) -> float:
    """Median time of a call [ms]."""
    times = []
    for _ in range(repeats):
        begun = time.perf_counter()
        call()
        times.append(time.perf_counter() - begun)
    return statistics.median(times) * 1e3


def measure(speed: float, factors: tuple[float, ...]) -> str:
    """One row of the table: all candidates at one speed, with each factor on the drag across."""
    diameter, density = candidates()
    area = np.pi / 4.0 * diameter**2
    rig = {
        "load": loads.viscous_load(
            diameter_m=diameter,
            speed_m_s=speed,
            density_kg_m3=DENSITY,
            viscosity_pa_s=VISCOSITY,
            normal_factor=np.array(factors)[:, None],
        ),
        "wet_weight_n_m": (density - DENSITY) * GRAVITY * area,
        "pull_down_n": PULL_N,
        "drag_n": DRAG_N,
        "length_m": LENGTH_M,
    }
    dry = density * GRAVITY * area
    ours = median_ms(lambda: shape.steady_shape(**rig).end(), 40)
    air = median_ms(lambda: tow.towed(dry_weight_n_m=dry, tip_height_m=TIP_M, **rig), 40)
    begun = time.perf_counter()
    lines = list(zip(diameter, density, strict=True))
    theirs = np.array([plain_depth(d, r, speed, factor) for factor in factors for d, r in lines])
    plain = (time.perf_counter() - begun) * 1e3
    off = np.abs(shape.steady_shape(**rig).end().height_m / theirs - 1.0).max()
    return (
        f"{len(theirs):5d} {speed:9.1f} {ours:8.2f} {air:12.2f} {plain:15.0f} {plain / ours:7.0f} {off:19.4%}"
    )


def main() -> None:
    print(f"{CANDIDATES} candidates, {LENGTH_M:g} m of line; medians of this run")
    print("lines speed m/s  ours ms  with air ms  plain scipy ms   ratio   depth differs by")
    for factors in ((1.0,), (0.9, 1.0, 1.5)):  # typical alone, then the range that is shown
        for speed in (0.3, 0.6, 1.2):
            print(measure(speed, factors))


if __name__ == "__main__":
    main()
