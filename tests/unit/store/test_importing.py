import signal

import pytest

from rigbuilder.store import importing, syscalls
from rigbuilder.store.atomic import sweep
from rigbuilder.store.errors import StoreError
from rigbuilder.store.importing import finish_imports, import_cards
from rigbuilder.store.listing import card_paths, read_entry
from rigbuilder.store.process import Process, mark, this_process


def names_in(folder):
    return sorted(path.name for path in folder.iterdir())


def test_cards_come_in_under_names_of_ours(tmp_path, make_card) -> None:
    cards = [
        make_card(id="../../x", name="../../etc/passwd"),
        make_card(id="/abs", name="/etc/passwd"),
        make_card(),
    ]
    cards.append({key: value for key, value in make_card(name="~/.bashrc").items() if key != "id"})
    done = import_cards(cards, tmp_path / "a" / "cards")
    assert len(done.paths) == 4
    assert {path.parent for path in done.paths} == {tmp_path / "a" / "cards"}
    assert all(path.is_file() for path in done.paths)
    assert names_in(tmp_path) == ["a"]
    assert sorted(done.paths) == card_paths(tmp_path / "a" / "cards")


def test_what_is_there_is_not_brought_in_twice(tmp_path, make_card) -> None:
    first = import_cards([make_card(id="a1"), make_card(id="a2")], tmp_path)
    again = import_cards(
        [make_card(id="a1"), make_card(id="a2", notes="other"), make_card(id="a3")], tmp_path
    )
    assert [read_entry(path).document["id"] for path in again.present] == ["a1"]
    assert set(again.present) < set(first.paths)
    assert again.renewed == 1
    assert len(again.paths) == 2
    documents = [read_entry(path).document for path in card_paths(tmp_path)]
    assert len({document["id"] for document in documents}) == 4


def test_one_identity_twice_in_a_set(tmp_path, make_card) -> None:
    done = import_cards([make_card(), make_card(notes="other")], tmp_path)
    assert done.renewed == 1
    assert len({read_entry(path).document["id"] for path in done.paths}) == 2


@pytest.mark.parametrize("call", ["open_file", "write", "flush", "link"])
@pytest.mark.parametrize("nth", [1, 2, 3, 5, 6, 8, 12])
def test_any_failure_imports_nothing(tmp_path, make_card, monkeypatch, call, nth) -> None:
    real, used = getattr(syscalls, call), 0

    def failing(*arguments):
        nonlocal used
        used += 1
        if used == nth:
            raise OSError(28, "No space left on device")
        return real(*arguments)

    monkeypatch.setattr(syscalls, call, failing)
    cards = [make_card(id=f"a{number}") for number in range(3)]
    try:
        import_cards(cards, tmp_path)
    except StoreError:
        assert names_in(tmp_path) == []
    else:
        assert len(card_paths(tmp_path)) == 3
        assert used < nth


KILLED = """
import itertools, os, signal, sys
from pathlib import Path
from rigbuilder.store import syscalls
from rigbuilder.store.importing import import_cards
at, count = int(sys.argv[2]), itertools.count(1)
real = syscalls.flush
def flush(handle):
    if next(count) == at:
        os.kill(os.getpid(), signal.SIGKILL)
    real(handle)
syscalls.flush = flush
cards = [{"format": "rigbuilder.card", "version": 1, "id": f"a{n}", "name": "Rod"} for n in range(3)]
import_cards(cards, Path(sys.argv[1]))
"""


def test_a_kill_at_any_flush_gives_all_or_none_at_the_next_start(tmp_path, start_python) -> None:
    outcomes = []
    for at in range(1, 30):
        folder = tmp_path / str(at)
        folder.mkdir()
        killed = start_python(KILLED, folder, at)
        assert killed.communicate()[1] == ""
        if killed.returncode == 0:
            break
        assert killed.returncode == -signal.SIGKILL
        finish_imports(folder)
        sweep(folder)
        outcomes.append(len(card_paths(folder)))
        assert len(names_in(folder)) == outcomes[-1]
    assert set(outcomes) == {0, 3}
    assert outcomes == sorted(outcomes)


def test_imports_of_running_and_distant_programs_are_left_alone(tmp_path, make_card) -> None:
    here = this_process()
    for process in (here, Process("another machine", here.boot, 7, "")):
        (tmp_path / f".rigbuilder-import-{mark(process)}-01234567").mkdir()
    (tmp_path / ".rigbuilder-import-mine").mkdir()
    assert finish_imports(tmp_path) == 0
    assert len(names_in(tmp_path)) == 3
    assert finish_imports(tmp_path / "none") == 0


def test_an_import_decided_before_a_crash_never_overwrites(tmp_path, make_card, monkeypatch) -> None:
    def crash(ready, folder):
        raise KeyboardInterrupt

    monkeypatch.setattr(importing, "_move_all", crash)
    with pytest.raises(KeyboardInterrupt):
        import_cards([make_card()], tmp_path)
    monkeypatch.undo()
    [ready] = tmp_path.iterdir()
    here = this_process()
    left = ready.with_name(ready.name.replace(mark(here), mark(Process(here.host, "earlier", 7, ""))))
    ready.rename(left)
    [card] = left.iterdir()
    (tmp_path / card.name).write_text("mine")
    assert finish_imports(tmp_path) == 1
    assert (tmp_path / card.name).read_text() == "mine"
    assert "pad-frog-rod-3-6f0c2d-imported.rigcard" in names_in(tmp_path)
