from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.drafts import Drafts
from rigbuilder.store.history import History
from rigbuilder.store.lock import Notice
from rigbuilder.store.paths import find_places
from rigbuilder.store.process import Process, mark, this_process
from rigbuilder.store.tidy import tidy


def test_a_start_clears_up_after_a_killed_program_and_touches_nothing_else(make_card, tmp_path) -> None:
    places = find_places()
    store = CardStore(places.cards, history=History(places.history), bin_=Bin(places.bin))
    saved = store.create(make_card())
    store.delete(store.duplicate(saved.path).path)
    Drafts(places.drafts).write(make_card(), saved.path, saved.fingerprint)
    (tmp_path / "club").mkdir()
    before = sorted(path for path in places.data.parent.parent.rglob("*"))

    here = this_process()
    dead = Process(here.host, "an earlier start", 7, "1")
    remnant = f".rigbuilder-{mark(dead)}-0123456789abcdef.part"
    history = places.history / make_card()["id"]
    for folder in (places.cards, history, places.bin, places.drafts, places.config, tmp_path / "club"):
        (folder / remnant).write_text("half a card")
    Notice(saved.path, dead).take()
    stage = places.cards / f".rigbuilder-import-{mark(dead)}-01234567"
    stage.mkdir()
    (stage / "a.rigcard").write_text("{")
    ready = stage.with_name(stage.name.replace("01234567", "89abcdef.ready"))
    ready.mkdir()
    (ready / "b.rigcard").write_bytes(saved.path.read_bytes())

    done = tidy(places, [tmp_path / "club", tmp_path / "missing"])
    assert (done.removed, done.imported) == (7, 1)
    (places.cards / "b.rigcard").unlink()
    assert sorted(path for path in places.data.parent.parent.rglob("*")) == before
    assert list((tmp_path / "club").iterdir()) == []
    assert tidy(places).removed == 0
