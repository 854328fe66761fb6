"""Undo, drafts and the dirty flag stay right through long random use of the desk."""

import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

from tests.stateful.expected import Expected
from tests.stateful.walk import Walk

_MEMORY = Path("/dev/shm")  # what a disk keeps through a power cut is tested elsewhere; here many saves count


@pytest.fixture
def folder() -> Iterator[Path]:
    """A fresh folder, in memory where there is such a place."""
    with tempfile.TemporaryDirectory(dir=_MEMORY if _MEMORY.is_dir() else None) as name:
        yield Path(name)


def test_ten_thousand_random_steps(folder: Path, qapp: QApplication) -> None:
    walk = Walk(folder, seed=2026)
    _steps(walk, 10_000)
    assert min(walk.done[name] for name in ("crash", "other writer", "removed", "reopen", "save as")) > 20
    walk.end()


@pytest.mark.parametrize("seed", [1, 2])
def test_the_whole_bench_walks_the_same_way(folder: Path, qapp: QApplication, seed: int) -> None:
    walk = Walk(folder, seed, reviewed=True)
    _steps(walk, 150)
    walk.end()


def test_the_walk_itself_sees_a_lost_step(
    folder: Path, qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Expected, "redo", lambda self: None)
    walk = Walk(folder, seed=3)
    with pytest.raises(AssertionError):
        _steps(walk, 2_000)


def _steps(walk: Walk, count: int) -> None:
    for _ in range(count):
        walk.step()
