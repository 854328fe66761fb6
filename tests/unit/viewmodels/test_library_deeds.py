"""What the library does with cards, forth, back and forth again, also with the card on the bench."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from rigbuilder.model.usual import usual_document
from rigbuilder.viewmodels.library_bench import OnBench
from rigbuilder.viewmodels.library_deeds import Deeds, retagged, tags_in
from rigbuilder.viewmodels.library_done import Deed, Trail
from rigbuilder.viewmodels.library_versions import deleted_cards, earlier_versions, restore_version, salvaged
from tests.unit.viewmodels.parts import make_room


class Table:
    """A desk with a bench and a library's deeds over fresh folders."""

    def __init__(self, folder: Path) -> None:
        room = make_room(folder)
        self.store, self.bench, self.desk = room.store, room.bench, room.desk
        self.deeds = Deeds(self.store, OnBench(self.desk, self.bench))

    def card(self, name: str, **changes: Any) -> Path:
        document = usual_document("frog") | {"id": f"id-{name}".replace(" ", "-"), "name": name} | changes
        return self.store.create(document).path

    def name(self, path: Path) -> str:
        return str(json.loads(path.read_text())["name"])

    def there(self) -> dict[str, bytes]:
        return {path.name: path.read_bytes() for path in self.store.folder.glob("*.rigcard")}


@pytest.fixture
def table(tmp_path: Path, qtbot: QtBot) -> Table:
    return Table(tmp_path)


Do = Callable[[Table, list[Path]], Deed]

DEEDS: dict[str, Do] = {
    "rename": lambda table, paths: table.deeds.rename(paths[0], "Another: name"),
    "tag": lambda table, paths: table.deeds.tag(paths, ["loan"], ["usual"]),
    "set tags": lambda table, paths: table.deeds.set_tags({paths[0]: ("x", "y")}),
    "duplicate": lambda table, paths: table.deeds.duplicate(paths),
    "delete": lambda table, paths: table.deeds.delete(paths),
    "paste": lambda table, paths: table.deeds.paste(
        json.dumps(usual_document("flip-jig") | {"id": "id-from-a-friend"}), table.store.folder
    ),
}


@pytest.mark.parametrize("name", DEEDS)
def test_every_deed_can_be_taken_back_and_done_again(table: Table, name: str) -> None:
    paths = [table.card("Rod 1", tags=["usual"]), table.card("Rod 2", tags=["usual", "own"])]
    before, trail = table.there(), Trail()
    deed = trail.add(DEEDS[name](table, paths))
    assert deed.says
    assert not deed.troubles
    after = table.there()
    assert after != before
    assert trail.can_undo
    assert not trail.undo().troubles
    assert table.there() == before
    assert trail.can_redo
    assert not trail.redo().troubles
    if name != "duplicate":  # a copy made again is another file
        assert table.there() == after
    assert len(table.there()) == len(after)
    trail.undo()
    assert table.there() == before
    assert not trail.can_undo


def test_a_deed_that_changes_nothing_leaves_no_trace(table: Table) -> None:
    path = table.card("Rod 1", tags=["loan"])
    trail = Trail()
    for deed in (
        table.deeds.rename(path, " Rod 1 "),
        table.deeds.rename(path, " "),
        table.deeds.tag([path], ["Loan"]),
    ):
        trail.add(deed)
        assert deed.text == ""
    assert not trail.can_undo
    assert trail.undo() == Deed()


def test_troubles_are_told_and_the_rest_is_done(table: Table) -> None:
    path = table.card("Rod 1")
    gone = table.store.folder / "gone.rigcard"
    deed = table.deeds.delete([gone, path])
    assert "gone" in deed.troubles[0]
    assert "“Rod 1” deleted." in deed.text
    assert table.there() == {}
    assert table.deeds.rename(gone, "x").troubles
    assert table.deeds.tag([gone], ["x"]).troubles
    assert table.deeds.duplicate([gone]).troubles
    assert table.deeds.export([gone], table.store.folder / "x.rigset").text.startswith(
        "Nothing was exported."
    )
    assert table.deeds.as_text([gone])[0] == ""
    assert table.deeds.take_in(gone, table.store.folder).text.startswith("Nothing was imported.")
    assert table.deeds.paste("good morning", table.store.folder).text.startswith("Nothing was pasted.")


def test_a_set_goes_out_and_comes_in_elsewhere(table: Table, tmp_path: Path) -> None:
    paths = [table.card("Rod 1"), table.card("Rod 2")]
    target = tmp_path / "club.rigset"
    assert table.deeds.export(paths, target).says == "2 cards packed into “club.rigset”."
    assert table.deeds.take_in(target, table.store.folder).says == "2 cards were here already."
    table.deeds.delete(paths)
    came = table.deeds.take_in(target, table.store.folder)
    assert came.says == "2 cards imported."
    assert sorted(map(table.name, came.paths)) == ["Rod 1", "Rod 2"]


def test_what_comes_in_goes_into_the_folder_that_is_shown(table: Table, tmp_path: Path) -> None:
    target, other = tmp_path / "club.rigset", tmp_path / "club rods"
    table.deeds.export([table.card("Rod 1")], target)
    before = table.there()
    came = table.deeds.take_in(target, other)
    assert came.says == "1 card imported into “club rods”."
    assert [path.parent for path in came.paths] == [other]
    assert table.there() == before
    assert came.back is not None
    assert came.back().says == "“Rod 1” deleted."
    assert list(other.iterdir()) == []


def test_a_card_goes_out_as_text_and_comes_back(table: Table) -> None:
    path = table.card("Rod 1")
    text, deed = table.deeds.as_text([path])
    assert deed.says == "1 card copied as text."
    assert text.startswith("Rigbuilder card: Rod 1")
    table.deeds.delete([path])
    quoted = "\n".join(f"> {line}" for line in text.splitlines())
    assert table.deeds.paste(f"Hello,\n{quoted}\nbye", table.store.folder).says == "1 card imported."


class TestTheCardOnTheBench:
    """The library and the bench never work against each other."""

    def test_a_new_name_is_an_edit_that_is_saved(self, table: Table) -> None:
        path = table.card("Rod 1")
        table.desk.open(path)
        deed = table.deeds.rename(path, "Rod one")
        assert table.bench.text("name") == "Rod one"
        assert not table.desk.is_dirty
        assert table.name(path) == "Rod one"
        assert deed.back is not None
        deed.back()
        assert table.name(path) == "Rod 1"
        table.bench.undo_stack.undo()
        assert table.bench.text("name") == "Rod one"

    def test_other_changes_are_not_saved_along(self, table: Table) -> None:
        path = table.card("Rod 1")
        table.desk.open(path)
        table.bench.edit("drag", "5 lb")
        deed = table.deeds.tag([path], ["loan"])
        assert table.bench.document["tags"][-1] == "loan"
        assert table.desk.is_dirty
        assert "loan" not in path.read_text()
        assert deed.says

    def test_deleted_it_stays_on_the_bench_as_unsaved_work(self, table: Table) -> None:
        path = table.card("Rod 1")
        table.desk.open(path)
        deed = table.deeds.delete([path])
        assert table.desk.path is None
        assert table.desk.is_dirty
        assert deed.back is not None
        deed.back()
        assert table.desk.path == path
        assert not table.desk.is_dirty
        assert table.desk.save().done

    def test_brought_back_after_more_work_it_is_dirty(self, table: Table) -> None:
        path = table.card("Rod 1")
        table.desk.open(path)
        deed = table.deeds.delete([path])
        table.bench.edit("drag", "5 lb")
        assert deed.back is not None
        deed.back()
        assert table.desk.path == path
        assert table.desk.is_dirty
        assert table.desk.save().done
        assert json.loads(path.read_text())["drag"] == "5 lb"


class TestVersions:
    """Earlier versions, broken cards, the bin."""

    def test_an_earlier_version_comes_back_as_the_newest(self, table: Table) -> None:
        path = table.card("Rod 1", drag="4 lb")
        loaded = table.store.load(path)
        table.store.save(loaded.document | {"drag": "6 lb"}, path, expected=loaded.fingerprint)
        (earlier,) = earlier_versions(table.store, path)
        assert earlier.differs == "drag set to 4 lb"
        deed = restore_version(table.store, path, earlier)
        assert json.loads(path.read_text())["drag"] == "4 lb"
        assert [version.differs for version in earlier_versions(table.store, path)] == ["drag set to 6 lb"]
        assert deed.back is not None
        deed.back()
        assert json.loads(path.read_text())["drag"] == "6 lb"

    def test_a_broken_card_shows_what_it_held_and_can_be_mended_from_its_history(self, table: Table) -> None:
        path = table.card("Rod 1")
        loaded = table.store.load(path)
        table.store.save(loaded.document | {"notes": "Snapped twice"}, path, expected=loaded.fingerprint)
        path.write_bytes(path.read_bytes()[:300])
        reason, pairs = salvaged(path)
        assert "line" in reason
        assert ("name", "Rod 1") in pairs
        newest = earlier_versions(table.store, path)[0]
        assert newest.differs == "can be read"
        assert restore_version(table.store, path, newest).says
        assert json.loads(path.read_text())["notes"] == "Snapped twice"

    def test_a_damaged_version_is_said_to_be_one(self, table: Table) -> None:
        path = table.card("Rod 1")
        loaded = table.store.load(path)
        table.store.save(loaded.document | {"notes": "x"}, path, expected=loaded.fingerprint)
        (earlier,) = earlier_versions(table.store, path)
        earlier.version.path.write_text("{}")
        (earlier,) = earlier_versions(table.store, path)
        assert earlier.differs == "This earlier version is damaged."
        assert restore_version(table.store, path, earlier).troubles

    def test_the_bin_lists_what_was_deleted(self, table: Table) -> None:
        paths = [table.card("Rod 1"), table.card("Rod 2")]
        for path in paths:
            table.deeds.delete([path])
        deleted = deleted_cards(table.store)
        assert [card.name for card in deleted] == ["Rod 2", "Rod 1"]
        assert table.deeds.bring_back([deleted[1].binned]).paths == (paths[0],)
        assert [card.name for card in deleted_cards(table.store)] == ["Rod 2"]


@pytest.mark.parametrize(
    ("text", "tags"),
    [
        ("", ()),
        ("loan", ("loan",)),
        (" loan , larkmere  bank ,, Loan", ("loan", "larkmere bank")),
    ],
)
def test_tags_in_a_text(text: str, tags: tuple[str, ...]) -> None:
    assert tags_in(text) == tags


def test_tags_are_put_on_once_and_taken_away_in_any_case() -> None:
    assert retagged(["Loan", "own"], ["LOAN", "new"], ["OWN"]) == ("Loan", "new")
