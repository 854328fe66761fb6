import errno
import os
import signal
import time
from pathlib import Path

import pytest

from rigbuilder.store import lock
from rigbuilder.store.errors import Busy, FolderGone
from rigbuilder.store.lock import FORGOTTEN_AFTER_S, Notice, sweep_notices, turn
from rigbuilder.store.process import Process, from_json, is_gone, mark, mark_is_gone, this_process

HERE = this_process()

HOLDER = """
import sys, time
from pathlib import Path
from rigbuilder.store.lock import Notice, turn
Notice(Path(sys.argv[1])).take()
with turn(Path(sys.argv[1])):
    print("held", flush=True)
    time.sleep(60)
"""


@pytest.fixture
def card(tmp_path) -> Path:
    path = tmp_path / "frog.rigcard"
    path.write_text("{}")
    return path


def test_the_second_program_is_told_who_has_the_card(card, start_python, monkeypatch) -> None:
    monkeypatch.setenv("USER", "coach")
    other = start_python(HOLDER, card)
    assert other.stdout.readline() == "held\n"
    notice = Notice(card)
    holder = notice.take()
    assert holder is not None
    assert holder.process.pid == other.pid
    assert str(holder).startswith("coach on ")
    assert f"process {other.pid}" in str(holder)
    with pytest.raises(Busy, match="Another program keeps saving"), turn(card, wait_s=0.05):
        pass
    other.send_signal(signal.SIGKILL)
    other.communicate()
    assert notice.take() is None
    with turn(card, wait_s=0.05) as notes:
        assert notes == ()
    notice.drop()
    assert list(card.parent.iterdir()) == [card]


def test_a_notice_may_be_overruled(card) -> None:
    other = Process("another machine", "x", 7, "1")
    assert Notice(card, other).take() is None
    assert Notice(card).take() is not None
    assert Notice(card).take(force=True) is None
    assert Notice(card).holder().process == HERE
    assert Notice(card, other).take().process == HERE
    Notice(card, other).drop()
    assert Notice(card).holder() is not None
    Notice(card).drop()
    assert Notice(card).holder() is None


def test_a_notice_from_afar_is_forgotten_when_nobody_renews_it(card) -> None:
    notice = Notice(card, Process("another machine", "x", 7, "1"))
    notice.take()
    old = time.time() - FORGOTTEN_AFTER_S - 60
    os.utime(notice.path, (old, old))
    assert Notice(card).holder() is None
    os.utime(notice.path)
    notice.renew()
    assert Notice(card).holder() is not None


@pytest.mark.parametrize("text", ["", "{}", "[]", '{"by": 7}', '{"by": {"host": 1}}', "\0" * 50, "x" * 9999])
def test_a_damaged_notice_holds_nobody_up(card, text) -> None:
    notice = Notice(card)
    notice.path.write_text(text)
    assert notice.holder() is None
    assert notice.take() is None
    assert notice.holder().process == HERE


def test_the_notice_of_a_link_is_that_of_its_file(card, tmp_path) -> None:
    (tmp_path / "link.rigcard").symlink_to(card)
    assert Notice(tmp_path / "link.rigcard").path == Notice(card).path


def test_where_nothing_can_be_written_there_is_no_notice_and_no_harm(tmp_path) -> None:
    assert Notice(tmp_path / "missing" / "frog.rigcard").take() is None


def test_a_vanished_folder(tmp_path) -> None:
    with pytest.raises(FolderGone), turn(tmp_path / "missing" / "frog.rigcard"):
        pass


@pytest.mark.parametrize("code", ["ENOLCK", "EOPNOTSUPP", "EBADF"])
def test_a_disk_without_locks_is_noted(card, monkeypatch, code) -> None:
    def cannot(handle, how):
        raise OSError(getattr(errno, code), "")

    monkeypatch.setattr(lock.fcntl, "flock", cannot)
    with turn(card) as notes:
        assert "knows no locks" in notes[0]


def test_only_the_notices_of_ended_programs_are_swept(card, tmp_path) -> None:
    for number, process in enumerate(
        [HERE, Process(HERE.host, "earlier", 7, ""), Process("another machine", "x", 7, "")]
    ):
        Notice(tmp_path / f"{number}.rigcard", process).take()
    assert sweep_notices(tmp_path) == 1
    assert sweep_notices(tmp_path / "none") == 0
    assert len(list(tmp_path.iterdir())) == 3


def test_whether_a_program_has_ended(start_python) -> None:
    ended = start_python("pass")
    ended.communicate()
    assert not is_gone(HERE, seen_from=HERE)
    assert is_gone(Process(HERE.host, HERE.boot, ended.pid, ""), seen_from=HERE)
    assert is_gone(Process(HERE.host, HERE.boot, HERE.pid, "before"), seen_from=HERE)
    assert is_gone(Process(HERE.host, "earlier", HERE.pid, ""), seen_from=HERE)
    assert not is_gone(Process("elsewhere", "earlier", ended.pid, ""), seen_from=HERE)
    assert not mark_is_gone(mark(HERE), seen_from=HERE)
    assert mark_is_gone(mark(Process(HERE.host, HERE.boot, ended.pid, "")), seen_from=HERE)


@pytest.mark.parametrize(
    "value", [None, 7, {}, {"host": "a"}, HERE.as_json() | {"pid": "7"}, HERE.as_json() | {"pid": -1}]
)
def test_only_whole_identities_are_read(value) -> None:
    assert from_json(value) is None
    assert from_json(HERE.as_json()) == HERE
