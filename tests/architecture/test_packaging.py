"""The two commands: sound scripts, and what a person sees where there is no display."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.architecture.code import PROJECT

NEEDS_OWN_ENVIRONMENT = pytest.mark.skipif(
    Path(sys.prefix) != PROJECT / ".venv", reason="runs only in the environment that packaging/test makes"
)


def _run_without_display(*cards: str | Path, cwd: Path) -> "subprocess.CompletedProcess[str]":
    environment = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY")}
    return subprocess.run(
        [PROJECT / "packaging" / "run", *cards],
        capture_output=True,
        text=True,
        cwd=cwd,
        env=environment,
        timeout=60,
    )


@pytest.mark.parametrize("script", ["packaging/run", "packaging/test", "packaging/build-deb", ".ci/run"])
def test_scripts_are_sound_bash(script: str) -> None:
    path = PROJECT / script
    assert subprocess.run(["bash", "-n", str(path)], capture_output=True, text=True).stderr == ""
    assert path.stat().st_mode & 0o111
    assert "set -euo pipefail" in path.read_text(encoding="utf-8")


@NEEDS_OWN_ENVIRONMENT
def test_without_a_display_the_ready_card_is_reviewed_in_the_terminal(tmp_path: Path) -> None:
    result = _run_without_display(cwd=tmp_path)
    assert result.returncode == 0, result.stderr
    assert "no display" in result.stderr
    assert "fault" in result.stdout


@NEEDS_OWN_ENVIRONMENT
def test_without_a_display_the_cards_named_are_reviewed(tmp_path: Path) -> None:
    (tmp_path / "broken one.rigcard").write_text("{", encoding="utf-8")
    result = _run_without_display("broken one.rigcard", cwd=tmp_path)
    assert result.returncode == 2
    assert "broken one.rigcard" in result.stderr
    assert "Traceback" not in result.stderr
