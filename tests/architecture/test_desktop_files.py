"""The program on a desktop: entry, kinds of file and store page are valid and agree."""

import configparser
import os
import shutil
import subprocess
import xml.etree.ElementTree as ElementTree
from pathlib import Path

import pytest
from PySide6.QtSvg import QSvgRenderer

from rigbuilder import __version__
from tests.architecture.code import PROJECT

ID = "org.larkmere.Rigbuilder"
FOLDER = PROJECT / "resources" / "desktop"
ENTRY = FOLDER / f"{ID}.desktop"
STORE_PAGE = FOLDER / f"{ID}.metainfo.xml"
KINDS = FOLDER / f"{ID}.mime.xml"
MIME = {"application/x-rigbuilder-card": "*.rigcard", "application/x-rigbuilder-lesson": "*.riglesson"}


def _checked(*command: str | Path, **environment: str) -> str:
    """Run one validator and return all it says; skip, with the reason, where it is not installed."""
    if shutil.which(str(command[0])) is None:
        pytest.skip(f"{command[0]} is not installed")
    result = subprocess.run(
        [str(word) for word in command],
        capture_output=True,
        text=True,
        timeout=60,
        env={**os.environ, **environment},
    )
    said = result.stdout + result.stderr
    assert result.returncode == 0, said
    return said


def _entry() -> configparser.SectionProxy:
    parser = configparser.ConfigParser(interpolation=None)
    parser.optionxform = str  # type: ignore[assignment, method-assign]
    parser.read(ENTRY, encoding="utf-8")
    return parser["Desktop Entry"]


def test_the_entry_is_valid() -> None:
    assert _checked("desktop-file-validate", ENTRY) == ""


def test_the_store_page_is_valid() -> None:
    assert "Validation was successful" in _checked(
        "appstreamcli", "validate", "--no-net", "--no-color", STORE_PAGE
    )


def test_the_kinds_of_file_are_known_by_their_names(tmp_path: Path) -> None:
    packages = tmp_path / "mime" / "packages"
    packages.mkdir(parents=True)
    shutil.copy(KINDS, packages / f"{ID}.xml")
    _checked(
        "update-mime-database", tmp_path / "mime", XDG_DATA_HOME=str(tmp_path), PKGSYSTEM_ENABLE_FSYNC="0"
    )
    globs = (tmp_path / "mime" / "globs2").read_text(encoding="utf-8")
    parents = (tmp_path / "mime" / "subclasses").read_text(encoding="utf-8")
    for kind, pattern in MIME.items():
        assert f":{kind}:{pattern}" in globs
        assert f"{kind} application/json" in parents


def test_the_three_files_agree() -> None:
    page = ElementTree.parse(STORE_PAGE).getroot()
    entry = _entry()
    assert page.findtext("id") == entry["Icon"] == entry["StartupWMClass"] == ID
    assert page.findtext("launchable") == ENTRY.name
    assert {node.text for node in page.iter("mediatype")} == set(MIME)
    assert set(entry["MimeType"].strip(";").split(";")) == set(MIME)
    releases = [node.get("version") for node in page.iter("release")]
    assert releases[0] == __version__


def test_the_icon_can_be_drawn() -> None:
    assert QSvgRenderer(str(FOLDER / f"{ID}.svg")).isValid()


def test_the_program_tells_the_desktop_the_same_name() -> None:
    assert f'setDesktopFileName("{ID}")' in (PROJECT / "rigbuilder" / "app.py").read_text(encoding="utf-8")
