"""Undo, drafts and the dirty flag stay right through long random use of the desk."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

from tests.stateful.expected import Expected
from tests.stateful.walk import Walk


def test_ten_thousand_random_steps(tmp_path: Path, qapp: QApplication) -> None:
    walk = Walk(tmp_path, seed=2026)
    _steps(walk, 10_000)
    assert min(walk.done[name] for name in ("crash", "other writer", "removed", "reopen", "save as")) > 20
    walk.end()


@pytest.mark.parametrize("seed", [1, 2])
def test_the_whole_bench_walks_the_same_way(tmp_path: Path, qapp: QApplication, seed: int) -> None:
    walk = Walk(tmp_path, seed, reviewed=True)
    _steps(walk, 150)
    walk.end()


def test_the_walk_itself_sees_a_lost_step(
    tmp_path: Path, qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Expected, "redo", lambda self: None)
    walk = Walk(tmp_path, seed=3)
    with pytest.raises(AssertionError):
        _steps(walk, 2_000)


def _steps(walk: Walk, count: int) -> None:
    for _ in range(count):
        walk.step()
