import time
from pathlib import Path

import pytest

from rigbuilder.store.drafts import Base, Draft, Drafts, Standing, compare
from rigbuilder.store.errors import StoreError
from rigbuilder.store.process import Process, this_process

HERE = this_process()
DEAD = Process(HERE.host, "an earlier start of this machine", 7, "1")


@pytest.fixture
def load(store):
    def load(path: Path):
        loaded = store.load(path)
        return loaded.document, loaded.fingerprint

    return load


def test_a_killed_program_leaves_its_draft_to_the_next(tmp_path, store, make_card) -> None:
    saved = store.create(make_card())
    Drafts(tmp_path / "drafts", DEAD).write(make_card(notes="typed"), saved.path, saved.fingerprint)
    [draft] = Drafts(tmp_path / "drafts").pending()
    assert draft.document == make_card(notes="typed")
    assert draft.card == saved.path
    assert draft.base == saved.fingerprint
    assert draft.name == "Pad frog, rod 3"
    assert store.load(saved.path).document == make_card()


def test_the_draft_of_a_running_program_is_not_offered(tmp_path, make_card) -> None:
    Drafts(tmp_path, HERE).write(make_card(), None, None)
    elsewhere = Process("another machine", "x", 7, "1")
    Drafts(tmp_path, elsewhere).write(make_card(), None, None)
    drafts = Drafts(tmp_path)
    assert drafts.pending() == []
    assert len(drafts.all()) == 2


def test_two_programs_on_one_card_keep_a_draft_each(tmp_path, make_card) -> None:
    card = tmp_path / "frog.rigcard"
    one, two = Drafts(tmp_path / "drafts", DEAD), Drafts(tmp_path / "drafts", DEAD)
    one.write(make_card(notes="one, early"), card, None)
    one.write(make_card(notes="one"), card, None)
    two.write(make_card(notes="two"), card, None)
    notes = [draft.document["notes"] for draft in Drafts(tmp_path / "drafts").pending()]
    assert notes == ["two", "one"]


def test_after_a_clean_save_nothing_is_left(tmp_path, make_card) -> None:
    drafts = Drafts(tmp_path / "drafts")
    drafts.remove(make_card(), None)
    drafts.write(make_card(), None, None)
    drafts.remove(make_card(), None)
    assert drafts.all() == []


def test_a_dismissed_draft_is_not_offered_again_but_stays(tmp_path, make_card) -> None:
    Drafts(tmp_path, DEAD).write(make_card(), None, None)
    drafts = Drafts(tmp_path)
    [draft] = drafts.pending()
    drafts.dismiss(draft)
    assert Drafts(tmp_path).pending() == []
    [kept] = Drafts(tmp_path).all()
    assert kept.document == make_card()
    assert kept.written_ns == draft.written_ns
    assert kept.by == DEAD
    drafts.sweep()
    assert len(drafts.all()) == 1
    drafts.sweep(older_than_days=-1)
    assert drafts.all() == []


def test_broken_drafts_are_told_and_left(tmp_path, make_card) -> None:
    drafts = Drafts(tmp_path, DEAD)
    good = drafts.write(make_card(), None, None)
    (tmp_path / "cut-new-0.json").write_bytes(good.read_bytes()[:-40])
    (tmp_path / "other-new-0.json").write_text("{}")
    (tmp_path / "newer-new-0.json").write_bytes(good.read_bytes().replace(b'"version": 1', b'"version": 9'))
    assert len(Drafts(tmp_path).pending()) == 1
    assert len(drafts.unreadable()) == 3
    assert len(list(tmp_path.iterdir())) == 4


def test_a_draft_folder_that_cannot_be_used_is_an_error_with_a_sentence(tmp_path, make_card) -> None:
    (tmp_path / "drafts").write_text("in the way")
    with pytest.raises(StoreError, match="is a file"):
        Drafts(tmp_path / "drafts").write(make_card(), None, None)
    assert Drafts(tmp_path / "drafts").pending() == []


HOUR_NS = 3_600_000_000_000


@pytest.mark.parametrize("newer", [True, False])
@pytest.mark.parametrize("base", [Base.SAME, Base.CHANGED, Base.GONE, Base.SAVED, Base.UNREADABLE])
def test_how_a_draft_stands_to_its_card(store, make_card, load, base, newer) -> None:
    saved = store.create(make_card())
    document = make_card(notes="typed")
    if base is Base.CHANGED:
        store.save(make_card(notes="someone else"), saved.path, expected=saved.fingerprint)
    elif base is Base.SAVED:
        store.save(document, saved.path, expected=saved.fingerprint)
    elif base is Base.UNREADABLE:
        saved.path.write_text("{")
    elif base is Base.GONE:
        saved.path.unlink()
    written = time.time_ns() + (HOUR_NS if newer else -HOUR_NS)
    draft = Draft(Path("x"), document, saved.path, saved.fingerprint, written, False, None)
    there = base not in (Base.GONE, Base.UNREADABLE)
    assert compare(draft, load) == Standing(base, newer if there else True)


def test_a_draft_of_a_card_never_saved(load, make_card) -> None:
    draft = Draft(Path("x"), make_card(name=" "), None, None, 0, False, None)
    assert compare(draft, load).base is Base.NEW
    assert draft.name == "New card"
