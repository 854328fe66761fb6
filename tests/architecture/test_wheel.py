"""The program as handed out: a wheel in a fresh environment finds its resources and works."""

import subprocess
import sys
import sysconfig
import zipfile
from pathlib import Path

import pytest

from tests.architecture.code import PROJECT

pytestmark = pytest.mark.xdist_group("wheel")  # built once, by one worker


def _run(*command: str | Path, cwd: Path) -> str:
    result = subprocess.run(
        [str(word) for word in command], capture_output=True, text=True, cwd=cwd, timeout=120
    )
    assert result.returncode == 0, f"{command}\n{result.stdout}\n{result.stderr}"
    return result.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The built wheel; the build backend is pinned with the gate's tools, so nothing is fetched."""
    pytest.importorskip("hatchling", reason="the build backend is not installed")
    folder = tmp_path_factory.mktemp("wheel")
    build = "import sys; from hatchling.build import build_wheel; print(build_wheel(sys.argv[1]))"
    name = _run(sys.executable, "-c", build, folder, cwd=PROJECT).strip().splitlines()[-1]
    return folder / name


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A fresh environment with the wheel in it; what it depends on is lent by this test's own."""
    folder = tmp_path_factory.mktemp("fresh")
    _run(sys.executable, "-m", "venv", "--without-pip", folder / "env", cwd=folder)
    python = folder / "env" / "bin" / "python"
    _run(
        sys.executable,
        "-m",
        "pip",
        "--python",
        python,
        "install",
        "--no-deps",
        "--no-index",
        "-q",
        wheel,
        cwd=folder,
    )
    site = _run(python, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))", cwd=folder).strip()
    # Lent as a plain path: link files inside it are not followed, so the checkout itself stays out of sight.
    (Path(site) / "lent.pth").write_text(sysconfig.get_path("purelib") + "\n", encoding="utf-8")
    return folder / "env"


def test_the_wheel_holds_every_shipped_file(wheel: Path) -> None:
    resources = PROJECT / "resources"
    shipped = {
        f"rigbuilder/resources/{p.relative_to(resources).as_posix()}"
        for p in resources.rglob("*")
        if p.is_file()
    }
    assert shipped <= set(zipfile.ZipFile(wheel).namelist())


def test_an_installed_program_finds_its_resources_and_works(installed: Path) -> None:
    ask = "import rigbuilder.resources as r; print(r.root())"
    root = Path(_run(installed / "bin" / "python", "-P", "-c", ask, cwd=installed).strip())
    assert root.is_relative_to(installed)
    program = installed / "bin" / "rigbuilder"
    assert "frog" in _run(program, "techniques", cwd=installed)
    review = subprocess.run(
        [program, "review", root / "demo" / "pad-frog.rigcard"],
        capture_output=True,
        text=True,
        cwd=installed,
        timeout=60,
    )
    assert (review.returncode, review.stderr) == (1, "")
    assert "fault" in review.stdout
