"""What every test gets: no real display, no real home, and no noise left unexplained."""

import logging
import os
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

WINDOW_SWITCH = "RIGBUILDER_WINDOW"
WINDOW_TESTS = Path(__file__).parent / "window"

# Before anything imports Qt: off the screen, unless the real-window switch is on.
os.environ.setdefault("QT_QPA_PLATFORM", "xcb" if os.environ.get(WINDOW_SWITCH) else "offscreen")

# Examples on a loaded machine may be slow, which is not a failure; a failing one prints how to repeat it.
settings.register_profile("gate", deadline=None, print_blob=True)
settings.load_profile("gate")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark everything below tests/window, and skip it unless a display was promised."""
    skip = pytest.mark.skip(
        reason=f"needs a real display: set {WINDOW_SWITCH}=1, or run packaging/test window"
    )
    for item in items:
        if item.path.is_relative_to(WINDOW_TESTS):
            item.add_marker(pytest.mark.window)
        if item.get_closest_marker("window") and not os.environ.get(WINDOW_SWITCH):
            item.add_marker(skip)


@pytest.fixture(scope="session")
def runtime_folder() -> Iterator[str]:
    """A short private folder for sockets, whose paths may not be longer than about a hundred bytes."""
    with tempfile.TemporaryDirectory(prefix="rig-") as folder:
        yield folder


@pytest.fixture(autouse=True)
def home(
    tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch, runtime_folder: str
) -> Path:
    """A fresh home for each test, so that nothing reads or writes the real one."""
    folder = tmp_path_factory.mktemp("home", numbered=True)
    monkeypatch.setenv("HOME", str(folder))
    for name, below in (
        ("XDG_DATA_HOME", ".local/share"),
        ("XDG_CONFIG_HOME", ".config"),
        ("XDG_STATE_HOME", ".local/state"),
        ("XDG_CACHE_HOME", ".cache"),
    ):
        monkeypatch.setenv(name, str(folder / below))
    monkeypatch.setenv("XDG_RUNTIME_DIR", runtime_folder)
    return folder


class _Collector(logging.Handler):
    def __init__(self) -> None:
        super().__init__(level=logging.WARNING)
        self.lines: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.lines.append(f"{record.levelname} {record.name}: {record.getMessage()}")


@pytest.fixture(autouse=True)
def no_unexpected_log(request: pytest.FixtureRequest) -> Iterator[None]:
    """Fail a test that logs a warning or worse, unless it asks for ``caplog`` and so looks itself."""
    collector = _Collector()
    logging.getLogger().addHandler(collector)
    try:
        yield
    finally:
        logging.getLogger().removeHandler(collector)
    if collector.lines and "caplog" not in request.fixturenames:
        pytest.fail("unexpected log records:\n" + "\n".join(collector.lines))
