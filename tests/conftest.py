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


class _Homes:
    """Hands out empty folders; making and removing one for each of many thousand tests takes minutes."""

    def __init__(self, folder: Path) -> None:
        self._folder, self._made = folder, 0

    def empty(self) -> Path:
        """Return the folder handed out last if nothing was put into it, or else a new one."""
        home = self._folder / f"home-{self._made}"
        if not home.exists() or any(home.iterdir()):
            self._made += 1
            home = self._folder / f"home-{self._made}"
            home.mkdir()
        return home


@pytest.fixture(scope="session")
def homes() -> Iterator[_Homes]:
    """What gives each test its home."""
    with tempfile.TemporaryDirectory(prefix="homes-", ignore_cleanup_errors=True) as folder:
        yield _Homes(Path(folder))


@pytest.fixture(autouse=True)
def home(homes: _Homes, monkeypatch: pytest.MonkeyPatch, runtime_folder: str) -> Path:
    """An empty home for each test, so that nothing reads or writes the real one."""
    folder = homes.empty()
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
