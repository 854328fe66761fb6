"""What the view tests share."""

from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication

from rigbuilder.views.theme_look import Look, Mode


@pytest.fixture
def look(qapp: QApplication) -> Iterator[Look]:
    """The light theme on the application, taken off again afterwards."""
    yield Look(qapp, mode=Mode.LIGHT)
    qapp.setStyleSheet("")


@pytest.fixture(scope="module")
def shared_look(qapp: QApplication) -> Iterator[Look]:
    """The light theme for all tests of a module that share one window."""
    yield Look(qapp, mode=Mode.LIGHT)
    qapp.setStyleSheet("")
