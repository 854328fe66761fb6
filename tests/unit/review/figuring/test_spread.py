"""Combined ranges against brute-force sampling of the very formulas that the figures use."""

from collections.abc import Callable, Mapping

import numpy as np
import pytest

from rigbuilder.mechanics.arrays import Array
from rigbuilder.mechanics.uncertainty import Range, combine
from rigbuilder.review.figuring import (
    dragging,
    resting,
    sections,
    seeing,
    spooling,
    striking,
    surging,
    towing,
)
from rigbuilder.review.figuring.batch import Batch
from rigbuilder.review.figuring.spread import Triples, alike, exactly, product, spread
from rigbuilder.review.figuring.usual import usual_rig
from tests.unit.review.figuring.rigs import REFERENCE

SAMPLES = 6000
MODULES = (dragging, resting, sections, seeing, spooling, striking, surging, towing)
Formula = Callable[..., Mapping[str, Array]]


def test_one_call_gives_what_single_calls_give() -> None:
    a, b = alike(1.0, 2.0, 4.0, 3), np.array([[0.5] * 3, [1.0] * 3, [1.1] * 3])
    found = spread(lambda *, a, b: {"x": a * b**2, "y": a - 3.0 * b}, {"a": a, "b": b})
    for name, formula in (("x", lambda a, b: a * b**2), ("y", lambda a, b: a - 3.0 * b)):
        single = combine(formula, inputs={"a": Range(*a), "b": Range(*b)})
        assert np.allclose(found[name], [single.low, single.typical, single.high])


def test_a_product_is_combined_as_any_formula() -> None:
    a, b = alike(1.0, 2.0, 4.0, 2), alike(0.5, 0.7, 0.8, 2)
    assert np.allclose(product(a, b), spread(lambda *, a, b: {"x": a * b}, {"a": a, "b": b})["x"])


def test_known_inputs_give_a_known_result() -> None:
    found = spread(lambda *, a: {"x": a + 1.0}, {"a": exactly(2.0, 4)})
    assert np.array_equal(found["x"], np.full((3, 4), 3.0))


# How far low and high may lie from the 5th and 95th percentile, in units of the sampled range between
# them. First-order combination follows limits that cut a range off (drag, chain, an empty spool) less well.
TOLERANCE = 0.12
LOOSE = {
    **dict.fromkeys(("hook_force_n", "hook_share", "lip_gap_m", "used_m3"), 0.2),
    **dict.fromkeys(("core_diameter_m", "main_turns", "backing_m3", "backing_turns"), 0.3),
}


@pytest.mark.parametrize("technique", ["drop-shot", "frog", "spinnerbait", "popper", "deep-diver"])
def test_ranges_agree_with_sampling(technique: str, monkeypatch: pytest.MonkeyPatch) -> None:
    seen: list[tuple[Formula, Mapping[str, Array], Triples]] = []

    def recorded(formula: Formula, inputs: Mapping[str, Array]) -> Triples:
        found = spread(formula, inputs)
        seen.append((formula, inputs, found))
        return found

    for module in MODULES:
        monkeypatch.setattr(module, "spread", recorded)
    batch = Batch([usual_rig(technique, REFERENCE)], [REFERENCE.techniques[technique]], REFERENCE, {})
    batch.compute_all()
    checked = {name: _distance(*entry, name=name) for entry in seen for name in entry[2]}
    del checked["fill_share"]  # replaced by main_share where backing fills up the spool
    assert len(checked) > 20
    wrong = {name: apart for name, apart in checked.items() if apart > LOOSE.get(name, TOLERANCE)}
    print(sorted(checked.items(), key=lambda e: -e[1])[:12])
    assert not wrong


def _distance(formula: Formula, inputs: Mapping[str, Array], found: Triples, *, name: str) -> float:
    """Largest distance of low and high from the percentiles, over the range between those; first row."""
    rng = np.random.default_rng(1)

    def draw(value: Array) -> Array:
        # Beyond two deviations a range says nothing, and shares would pass 1.
        drawn = Range(*value).at(np.clip(rng.standard_normal((SAMPLES, 1)), -2.0, 2.0))
        return np.maximum(drawn, 0.0) if (value >= 0.0).all() else drawn

    values = {key: draw(value) for key, value in inputs.items()}
    sampled = np.broadcast_to(formula(**values)[name], (SAMPLES, next(iter(inputs.values())).shape[1]))[:, 0]
    low, high = np.quantile(sampled, [0.05, 0.95])
    width = max(high - low, 0.02 * abs(high), 1e-12)
    ends = found[name][:, 0]
    return float(max(abs(ends[0] - low), abs(ends[2] - high)) / width)
