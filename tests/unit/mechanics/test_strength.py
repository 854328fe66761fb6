"""The weakest link against brute-force sampling, numerical integration and limits."""

import json
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.stats import norm

from rigbuilder.mechanics.errors import ImpossibleInput
from rigbuilder.mechanics.strength import chain_strength, link_strength
from rigbuilder.mechanics.uncertainty import Range, known
from rigbuilder.mechanics.validity import remarks

DATA = json.loads((Path(__file__).parent / "data_second" / "tackle.json").read_text(encoding="utf-8"))
MEANS, SPREADS = np.transpose(DATA["weakest_link"]["elements"])


def sampled_chain(means: np.ndarray, spreads: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    links = np.random.default_rng(11).normal(means, spreads, (400_000, len(means)))
    first = np.bincount(links.argmin(axis=1), minlength=len(means)) / len(links)
    return first, links.min(axis=1)


def test_worked_example_of_three_links() -> None:
    # 60 +- 5, 62 +- 6, 75 +- 4: mean of the weakest 57.78; 60 / 40 / 0.2 % (brute-force sampling)
    row = DATA["weakest_link"]
    chain = chain_strength(mean_n=MEANS, sd_n=SPREADS)
    assert chain.mean_n == pytest.approx(row["mean_min"], rel=1e-5)
    assert chain.mean_n == pytest.approx(row["mc"], abs=0.02)
    assert chain.breaks_first == pytest.approx(row["p_first_breaks"], abs=2e-3)


@pytest.mark.parametrize(
    ("means", "spreads"),
    [
        ([60.0, 62.0, 75.0], [5.0, 6.0, 4.0]),
        ([40.0, 40.0, 40.0, 40.0], [2.0, 4.0, 6.0, 8.0]),
        ([100.0, 55.0, 300.0], [20.0, 1.0, 30.0]),
        ([80.0], [9.0]),
    ],
)
def test_agrees_with_brute_force_sampling(means: list[float], spreads: list[float]) -> None:
    first, weakest = sampled_chain(np.array(means), np.array(spreads))
    chain = chain_strength(mean_n=means, sd_n=spreads)
    assert chain.breaks_first == pytest.approx(first, abs=4e-3)
    assert chain.mean_n == pytest.approx(weakest.mean(), rel=2e-3)
    assert chain.sd_n == pytest.approx(weakest.std(), rel=1e-2)
    found = [float(chain.strength.low), float(chain.strength.typical), float(chain.strength.high)]
    assert found == pytest.approx(np.percentile(weakest, [5, 50, 95]), rel=3e-3)


def test_agrees_with_adaptive_integration() -> None:
    def first(which: int) -> float:
        def integrand(x: float) -> float:
            others = [
                norm.sf(x, m, s)
                for place, (m, s) in enumerate(zip(MEANS, SPREADS, strict=True))
                if place != which
            ]
            return float(norm.pdf(x, MEANS[which], SPREADS[which]) * np.prod(others))

        return float(quad(integrand, 20.0, 110.0, epsabs=1e-10, limit=200)[0])

    chain = chain_strength(mean_n=MEANS, sd_n=SPREADS)
    assert chain.breaks_first == pytest.approx([first(which) for which in range(3)], abs=2e-5)


def test_two_equal_links_have_the_known_mean() -> None:
    # the lesser of two independent standard normals has mean -1/sqrt(pi) (David & Nagaraja, Order Statistics)
    chain = chain_strength(mean_n=[50.0, 50.0], sd_n=[3.0, 3.0])
    assert chain.mean_n == pytest.approx(50.0 - 3.0 / np.sqrt(np.pi), rel=1e-5)
    assert chain.sd_n == pytest.approx(3.0 * np.sqrt(1.0 - 1.0 / np.pi), rel=1e-4)


def test_many_candidates_at_once_are_each_as_alone() -> None:
    generator = np.random.default_rng(5)
    means = generator.uniform(30.0, 120.0, (40, 6))
    spreads = means * generator.uniform(0.02, 0.2, (40, 6))
    together = chain_strength(mean_n=means, sd_n=spreads)
    for place in range(40):
        alone = chain_strength(mean_n=means[place], sd_n=spreads[place])
        assert together.breaks_first[place] == pytest.approx(alone.breaks_first, abs=1e-12)
        assert together.mean_n[place] == pytest.approx(alone.mean_n, rel=1e-12)


@settings(max_examples=60)
@given(st.lists(st.tuples(st.floats(5.0, 300.0), st.floats(0.0, 0.3)), min_size=1, max_size=8))
def test_a_chain_is_no_stronger_than_its_weakest_link(links: list[tuple[float, float]]) -> None:
    means = np.array([mean for mean, _ in links])
    spreads = np.array([mean * variation for mean, variation in links])
    chain = chain_strength(mean_n=means, sd_n=spreads)
    assert chain.breaks_first.sum() == pytest.approx(1.0)
    assert (chain.breaks_first >= 0.0).all()
    assert chain.mean_n <= means.min() * (1.0 + 2e-3)
    assert chain.strength.low <= chain.strength.typical <= chain.strength.high


@given(st.floats(1.05, 3.0))
def test_strengthening_one_link_never_weakens_the_chain(factor: float) -> None:
    before = chain_strength(mean_n=MEANS, sd_n=SPREADS)
    after = chain_strength(mean_n=MEANS * [factor, 1.0, 1.0], sd_n=SPREADS)
    assert after.mean_n >= before.mean_n
    assert after.breaks_first[0] <= before.breaks_first[0]


def test_links_known_exactly() -> None:
    chain = chain_strength(mean_n=[50.0, 60.0], sd_n=[0.0, 0.0])
    assert chain.breaks_first == pytest.approx([1.0, 0.0])
    assert chain.mean_n == pytest.approx(50.0, rel=1e-3)


def test_strength_of_one_link_is_the_product_of_its_factors() -> None:
    link = link_strength(
        dry_strength_n=known(62.3),
        factors={"wetness": Range(0.85, 0.9, 0.95), "knot": Range(0.6, 0.8, 0.95)},
    )
    assert float(link.typical) == pytest.approx(62.3 * 0.9 * 0.8)
    lowest = np.exp(-np.hypot(np.log(0.9 / 0.85), np.log(0.8 / 0.6)))
    assert float(link.low) == pytest.approx(62.3 * 0.72 * lowest)


def test_remarks_and_refusals() -> None:
    assert remarks("strength.chain_strength", variation=0.5)
    with pytest.raises(ImpossibleInput, match="mean strength of a link"):
        chain_strength(mean_n=[0.0, 10.0], sd_n=[1.0, 1.0])
    with pytest.raises(ImpossibleInput, match="factor for knot"):
        link_strength(dry_strength_n=known(10.0), factors={"knot": Range(-0.1, 0.5, 0.9)})
