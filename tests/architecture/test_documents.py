"""What surrounds the code: pinned versions, honest documents, nothing of anyone's own machine."""

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from tests.architecture.code import PROJECT

NOT_OURS = {".git", ".venv", "build", "dist", "__pycache__", ".hypothesis"}
TEXT = {
    ".py",
    ".md",
    ".toml",
    ".txt",
    ".json",
    ".rigcard",
    ".riglesson",
    ".xml",
    ".desktop",
    ".svg",
    ".spec",
    ".cfg",
    "",
}

# Written in parts, so that the patterns do not find themselves.
FOLDERS = "|".join(("work", "root", "home", "Users", "mnt", "opt"))
OF_A_MACHINE = {
    "a folder of one machine": re.compile(rf"(?<![\w./}}~-])/(?:{FOLDERS})/[\w.-]+"),
    "a package registry": re.compile(
        r"py" + r"pi\.|python" + r"hosted|--(?:extra-)?index" + r"-url|--find" + r"-links", re.IGNORECASE
    ),
    "a recording": re.compile(
        r"\b(?:you" + r"tube|pod" + r"cast|tran" + r"script|sub" + r"titles?)\b", re.IGNORECASE
    ),
    "unfinished work": re.compile(r"\b(?:TO" + r"DO|FIX" + r"ME|XX" + r"X)\b"),
}


def _texts() -> Iterator[Path]:
    for path in sorted(PROJECT.rglob("*")):
        inner = path.relative_to(PROJECT).parts
        ours = not NOT_OURS & set(inner) and not any(part.endswith("_cache") for part in inner)
        if ours and path.is_file() and path.suffix in TEXT:
            yield path


def _requirements(path: Path) -> dict[str, Requirement]:
    lines = path.read_text(encoding="utf-8").splitlines()
    parsed = [Requirement(line) for line in lines if line and not line.startswith(("#", "-r "))]
    return {canonicalize_name(requirement.name): requirement for requirement in parsed}


@pytest.mark.parametrize("what", OF_A_MACHINE)
def test_the_project_stands_on_its_own(what: str) -> None:
    found = [
        f"{path.relative_to(PROJECT)}:{number}: {match.group()}"
        for path in _texts()
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1)
        if (match := OF_A_MACHINE[what].search(line))
    ]
    assert found == []


def test_every_version_is_pinned() -> None:
    for name in ("requirements.txt", "requirements-test.txt"):
        for requirement in _requirements(PROJECT / "packaging" / name).values():
            assert [specifier.operator for specifier in requirement.specifier] == ["=="], str(requirement)


def test_pins_lie_within_what_the_project_asks_for() -> None:
    project = tomllib.loads((PROJECT / "pyproject.toml").read_text(encoding="utf-8"))
    run = _requirements(PROJECT / "packaging" / "requirements.txt")
    test = run | _requirements(PROJECT / "packaging" / "requirements-test.txt")
    wanted = [(run, text) for text in project["project"]["dependencies"]]
    wanted += [(test, text) for text in project["project"]["optional-dependencies"]["test"]]
    wanted += [(test, text) for text in project["build-system"]["requires"]]
    for pins, requirement in ((pins, Requirement(text)) for pins, text in wanted):
        pin = pins[canonicalize_name(requirement.name)]
        assert requirement.specifier.contains(next(iter(pin.specifier)).version), (
            f"{pin} against {requirement}"
        )


@pytest.mark.parametrize("document", ["README.md", "DEVELOPERS.md"])
def test_documents_point_at_what_is_there(document: str) -> None:
    text = (PROJECT / document).read_text(encoding="utf-8")
    links = re.findall(r"\]\(([^)#:]+)\)", text)
    quoted = re.findall(r"`((?:packaging|resources|tests|rigbuilder|\.ci)/[\w./-]+)`", text)
    assert [place for place in links + quoted if not (PROJECT / place).exists()] == []
