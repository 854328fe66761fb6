"""Real windows on a private display: the program as a person starts it, with real keys and clicks."""

import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.window.desk import Desk, Program

PROJECT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="session")
def desk() -> Desk:
    """The display's windows, keyboard and mouse."""
    return Desk()


@pytest.fixture
def start(desk: Desk, home: Path) -> Iterator[Callable[..., Program]]:
    """Return a function that starts the program: ``start(card)``, or ``start(card, script="...")``.

    With ``script`` the given Python source is run instead of the program. Whatever was started is ended when
    the test is over, and what it printed is shown if the test fails.
    """
    programs: list[Program] = []

    def begin(*arguments: str | Path, script: str | None = None) -> Program:
        # What to run comes as `python -P -m rigbuilder CARD`, exactly as packaging/run does it.
        what = ["-m", "rigbuilder"] if script is None else ["-c", script]
        environment = {**os.environ, "PYTHONPATH": str(PROJECT), "PYTHONFAULTHANDLER": "1"}
        log = home / f"program-{len(programs)}.log"
        with log.open("wb") as output:
            process = subprocess.Popen(
                [sys.executable, "-P", *what, *map(str, arguments)],
                cwd=home,
                env=environment,
                stdin=subprocess.DEVNULL,
                stdout=output,
                stderr=subprocess.STDOUT,
            )
        programs.append(Program(process=process, log=log, desk=desk))
        return programs[-1]

    yield begin
    for program in programs:
        program.end()
        print(program.output())  # shown by pytest only when the test fails
