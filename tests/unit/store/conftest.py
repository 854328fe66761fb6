"""What the tests of the store share: a store in a fresh folder, a card, a way to run another program."""

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import rigbuilder
from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.history import History

GOLDEN = Path(__file__).parent / "versions"


@pytest.fixture
def store(tmp_path: Path) -> CardStore:
    return CardStore(tmp_path / "cards", history=History(tmp_path / "history"), bin_=Bin(tmp_path / "bin"))


@pytest.fixture
def make_card() -> Callable[..., dict[str, Any]]:
    def make(**changes: Any) -> dict[str, Any]:
        card = {
            "format": "rigbuilder.card",
            "version": 1,
            "id": "6f0c2d1e-0000-4000-8000-00000000a001",
            "name": "Pad frog, rod 3",
            "tags": ["larkmere"],
            "lure": {"technique": "hollow-body frog", "weight": "5/8 oz", "trailer": None},
            "main": {"type": "braid", "test": "50 lb"},
        }
        return card | changes

    return make


@pytest.fixture
def golden() -> Callable[[str], bytes]:
    return lambda name: (GOLDEN / name).read_bytes()


@pytest.fixture
def start_python() -> Callable[..., "subprocess.Popen[str]"]:
    """Start another Python with this checkout's package and return it, its output in pipes."""

    def start(code: str, *arguments: object) -> "subprocess.Popen[str]":
        environment = os.environ | {"PYTHONPATH": str(Path(rigbuilder.__file__).parent.parent)}
        command = [sys.executable, "-c", code, *map(str, arguments)]
        return subprocess.Popen(
            command, env=environment, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
        )

    return start
