"""Progress of juniors: a file each, whole after every kill, exportable, deletable."""

import json
import signal
import time
from collections.abc import Callable
from pathlib import Path
from subprocess import Popen

import pytest

from rigbuilder.lessons.progress import Answered, Progress
from rigbuilder.store.errors import AlreadyThere, BadName, CardError
from rigbuilder.store.progress import ProgressStore


@pytest.fixture
def kept(tmp_path: Path) -> ProgressStore:
    return ProgressStore(tmp_path / "progress")


def _some(name: str = "Mia") -> Progress:
    return Progress(name=name, answers=(Answered(lesson="one", rig=2, understood=("line-worn",)),))


def test_a_new_junior_begins_with_nothing_and_no_file(kept: ProgressStore) -> None:
    assert kept.load("  Mia ") == Progress(name="Mia")
    assert kept.juniors() == []


def test_progress_is_found_again_under_the_name(kept: ProgressStore) -> None:
    kept.save(_some())
    kept.save(Progress(name="Älvar"))
    assert kept.load("Mia") == _some()
    assert [junior.name for junior in kept.juniors()] == ["Mia", "Älvar"]
    assert kept.path("Mia").stat().st_mode & 0o077 == 0


def test_what_a_newer_program_added_is_kept(kept: ProgressStore) -> None:
    kept.save(_some())
    path = kept.path("Mia")
    told = json.loads(path.read_text(encoding="utf-8"))
    path.write_text(json.dumps(told | {"club": "Larkmere"}), encoding="utf-8")
    kept.save(kept.load("Mia").with_(answers=[]))
    assert json.loads(path.read_text(encoding="utf-8"))["club"] == "Larkmere"


@pytest.mark.parametrize("name", ["", "   ", "x" * 61])
def test_a_name_is_needed(kept: ProgressStore, name: str) -> None:
    with pytest.raises(BadName):
        kept.load(name)


def test_a_damaged_file_is_listed_with_the_reason_and_never_overwritten_by_reading(
    kept: ProgressStore,
) -> None:
    kept.save(_some())
    path = kept.path("Mia")
    path.write_text('{"format": "rigbuilder.progress", "version": 1, "name": 3}', encoding="utf-8")
    with pytest.raises(CardError, match="name"):
        kept.load("Mia")
    assert [bool(junior.trouble) for junior in kept.juniors()] == [True]


def test_export_and_delete(kept: ProgressStore, tmp_path: Path) -> None:
    kept.save(_some())
    target = tmp_path / "mia.rigprogress"
    kept.export("Mia", target)
    assert target.read_bytes() == kept.path("Mia").read_bytes()
    with pytest.raises(AlreadyThere):
        kept.export("Mia", target)
    kept.delete("Mia")
    assert kept.juniors() == []
    assert not kept.path("Mia").exists()
    assert target.exists()


_WRITER = """
import sys
from pathlib import Path
from rigbuilder.lessons.progress import Answered, Progress
from rigbuilder.store.progress import ProgressStore
store, progress, number = ProgressStore(Path(sys.argv[1])), Progress(name="Mia"), 0
while True:
    number += 1
    answers = [*(a.model_dump(mode="json") for a in progress.answers), {"lesson": "one", "rig": number}]
    progress = progress.with_(answers=answers)
    store.save(progress)
    print(number, flush=True)
"""


def test_a_kill_in_the_middle_of_saving_loses_nothing_that_was_acknowledged(
    kept: ProgressStore, start_python: "Callable[..., Popen[str]]"
) -> None:
    for delay_s in (0.05, 0.11, 0.17):
        writer = start_python(_WRITER, kept.folder)
        assert writer.stdout is not None
        assert writer.stdout.readline().strip() == "1"
        time.sleep(delay_s)
        writer.send_signal(signal.SIGKILL)
        told, _ = writer.communicate(timeout=30)
        acknowledged = max([1, *(int(line) for line in told.split())])
        answers = kept.load("Mia").answers
        assert len(answers) in (acknowledged, acknowledged + 1)
        assert [answer.rig for answer in answers] == list(range(1, len(answers) + 1))
