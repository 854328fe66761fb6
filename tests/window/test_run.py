"""The first command, as a newcomer gives it: it opens a window on the ready card."""

import subprocess
from pathlib import Path

from tests.window.desk import Desk

PROJECT = Path(__file__).resolve().parents[2]


def test_the_first_command_opens_the_ready_card(desk: Desk, tmp_path: Path) -> None:
    log = tmp_path / "log"
    with log.open("wb") as output:
        command = subprocess.Popen(
            [PROJECT / "packaging" / "run"], cwd=tmp_path, stdout=output, stderr=output
        )
    try:
        desk.close(desk.wait_for_window("Pad frog, rod 3", of=command))
        assert command.wait(timeout=15) == 0
    finally:
        command.terminate()
        command.wait(timeout=15)
    assert "Traceback" not in log.read_text(encoding="utf-8")
