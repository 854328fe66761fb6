"""Mechanics must not slow the start of the program."""

import subprocess
import sys
from pathlib import Path

import rigbuilder.mechanics


def test_importing_all_of_mechanics_leaves_scipy_alone() -> None:
    folder = Path(str(rigbuilder.mechanics.__file__)).parent
    names = [f"rigbuilder.mechanics.{path.stem}" for path in folder.glob("*.py") if path.stem != "__init__"]
    code = f"import sys, {', '.join(names)}; print('scipy' in sys.modules)"
    answer = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=folder.parent.parent
    )
    assert len(names) > 20
    assert answer.stdout.strip() == "False"
