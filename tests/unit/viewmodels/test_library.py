"""The library over real folders: rows, verdicts, search, order, and what happens on the disk meanwhile."""

import json
import os
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from rigbuilder.model.document import put_all
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference, load
from rigbuilder.review.rules.book import RULES
from rigbuilder.store.library import Library
from rigbuilder.store.rows import Sorting
from rigbuilder.viewmodels import library_worker
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.library import CardLibrary
from rigbuilder.viewmodels.library_lines import Grouping, Heading, changed_words
from rigbuilder.viewmodels.library_verdicts import rules_mark
from rigbuilder.viewmodels.library_worker import verdicts_of

WRONG = {"main.type": "fluorocarbon", "main.test": "16 lb", "main.diameter": None}


@pytest.fixture(scope="module")
def reference() -> Reference:
    return load()


def put(folder: Path, name: str, **changes: Any) -> Path:
    technique = changes.pop("technique", "frog")
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{name}.rigcard"
    document = put_all(
        usual_document(technique), {"id": f"id-{name}".replace(" ", "-"), "name": name, **changes}
    )
    path.write_text(json.dumps(document), encoding="utf-8")
    return path


@pytest.fixture
def library(tmp_path: Path, reference: Reference, qtbot: QtBot) -> Iterator[CardLibrary]:
    bench = Bench({}, reference, House.shipped())
    library = CardLibrary(tmp_path / "cards", bench, tmp_path / "cache" / "verdicts.json")
    yield library
    library.close()


@pytest.fixture
def looked(library: CardLibrary, qtbot: QtBot) -> Callable[[], CardLibrary]:
    def look() -> CardLibrary:
        library.look()
        qtbot.waitUntil(lambda: not library._poll.isActive(), timeout=10_000)
        return library

    return look


def names(library: CardLibrary, query: str = "", by: Sorting = Sorting.NAME, **how: Any) -> list[str]:
    lines = library.lines(query, by, how.pop("group", Grouping.NONE), descending=how.pop("descending", False))
    return [line.text if isinstance(line, Heading) else line.name for line in lines]


def test_cards_come_with_their_verdicts(library: CardLibrary, looked: Callable[[], CardLibrary]) -> None:
    put(library.folder, "Rod 10")
    put(library.folder, "Rod 2", **WRONG)
    put(library.folder, "Rod 3", **{"main.test": "rather strong"})
    (library.folder / "torn.rigcard").write_text('{"format": "rigbuilder.card", "name": "To')
    looked()
    assert names(library) == ["Rod 2", "Rod 3", "Rod 10", "torn"]
    verdicts = {row.name: library.verdict(row) for row in library.rows.values()}
    assert verdicts == {"Rod 10": "right", "Rod 2": "fault", "Rod 3": "unfinished", "torn": "broken"}
    assert names(library, "verdict:fault") == ["Rod 2"]
    assert names(library, "verdict:unfin") == ["Rod 3"]
    assert names(library, "line:fluorocarbon rod") == ["Rod 2"]
    assert names(library, by=Sorting.VERDICT)[0] == "Rod 2"


def test_verdicts_are_kept_for_the_next_start(
    library: CardLibrary, looked: Callable[[], CardLibrary], tmp_path: Path, reference: Reference
) -> None:
    put(library.folder, "Rod 1", **WRONG)
    looked()
    library.close()
    other = CardLibrary(
        library.folder, Bench({}, reference, House.shipped()), tmp_path / "cache/verdicts.json"
    )
    assert other.verdict(next(iter(library.rows.values()))) == "fault"
    (tmp_path / "cache/verdicts.json").write_text("torn")
    third = CardLibrary(
        library.folder, Bench({}, reference, House.shipped()), tmp_path / "cache/verdicts.json"
    )
    assert third.verdict(next(iter(library.rows.values()))) == ""


def test_other_house_rules_are_other_verdicts(
    library: CardLibrary, looked: Callable[[], CardLibrary], reference: Reference
) -> None:
    put(library.folder, "Rod 1", **WRONG)
    looked()
    (row,) = library.rows.values()
    house = House.read({"severity": {rule.name: "right" for rule in RULES}}, reference)
    assert rules_mark(house) != rules_mark(House.shipped())
    library._bench.use_house(house.apply(reference), house)
    looked()
    assert library.verdict(row) == "right"


def test_what_changes_on_the_disk_is_seen(
    library: CardLibrary, looked: Callable[[], CardLibrary], qtbot: QtBot
) -> None:
    path = put(library.folder, "Rod 1")
    looked()
    with qtbot.waitSignal(library.verdicts_changed, timeout=10_000):  # the folder is watched
        put(library.folder, "Rod 2")
    path.unlink()
    looked()
    assert names(library) == ["Rod 2"]


def test_a_changed_card_is_not_yet_reviewed_until_it_is(
    library: CardLibrary, looked: Callable[[], CardLibrary], qtbot: QtBot
) -> None:
    put(library.folder, "Rod 1")
    looked()
    put(library.folder, "Rod 1", **WRONG)
    seen = []
    library.rows_changed.connect(lambda: seen.extend(map(library.verdict, library.rows.values())))
    looked()
    assert seen[0] == ""
    assert [library.verdict(row) for row in library.rows.values()] == ["fault"]


def test_groups_have_headings_with_counts(library: CardLibrary, looked: Callable[[], CardLibrary]) -> None:
    put(library.folder, "Rod 1", tags=["larkmere", "loan"])
    put(library.folder, "Rod 2", tags=["loan"], **WRONG)
    put(library.folder, "Rod 3", technique="flip-jig", tags=[])
    looked()
    by_tag = library.lines("", Sorting.NAME, Grouping.TAG, descending=False)
    told = [(line.text, line.count) for line in by_tag if isinstance(line, Heading)]
    assert told == [("larkmere", 1), ("loan", 2), ("without a tag", 1)]
    assert names(library, group=Grouping.TAG).count("Rod 1") == 2
    by_verdict = names(library, group=Grouping.VERDICT)
    assert by_verdict.index("fault") < by_verdict.index("Rod 2") < by_verdict.index("right")
    assert "hollow-body frog" in names(library, group=Grouping.TECHNIQUE)


def test_conflict_copies_and_twins_are_known(library: CardLibrary, looked: Callable[[], CardLibrary]) -> None:
    path = put(library.folder, "Rod 1")
    text = path.read_text()
    (library.folder / "Rod 1 (laptop's conflicted copy 2026-05-02).rigcard").write_text(text)
    (library.folder / "copied.rigcard").write_text(text)
    looked()
    assert list(library.conflicts.values()) == ["Rod 1.rigcard"]
    assert library.twins == {"Rod 1.rigcard", "copied.rigcard"}


def test_a_folder_that_is_none_is_told_and_a_new_one_is_no_trouble(
    library: CardLibrary, looked: Callable[[], CardLibrary]
) -> None:
    told: list[str] = []
    library.told.connect(told.append)
    looked()
    assert told == [""]
    library.folder.write_text("not a folder")
    looked()
    assert "cards" in told[-1]


def test_reviewing_can_be_stopped_and_taken_up_again(
    library: CardLibrary, looked: Callable[[], CardLibrary], qtbot: QtBot
) -> None:
    for number in range(60):
        put(library.folder, f"Rod {number}", notes=str(number))
    library.look()
    qtbot.waitUntil(lambda: len(library.rows) == 60 and bool(library.verdicts.known), timeout=10_000)
    library.stop_reviewing()
    qtbot.waitUntil(lambda: not library._poll.isActive(), timeout=10_000)
    known = len(library.verdicts.known)
    assert known < 60
    library.review_missing()
    qtbot.waitUntil(lambda: len(library.verdicts.known) == 60, timeout=20_000)


def test_a_card_over_which_the_review_stumbles_spoils_no_other(
    tmp_path: Path, reference: Reference, monkeypatch: pytest.MonkeyPatch
) -> None:
    put(tmp_path, "good")
    put(tmp_path, "bad", notes="stumble")
    real = library_worker.review_documents

    def stumbles(documents: Any, *by: Any) -> Any:
        if any(document.get("notes") == "stumble" for document in documents):
            raise ZeroDivisionError
        return real(documents, *by)

    monkeypatch.setattr(library_worker, "review_documents", stumbles)
    library = Library(tmp_path)
    library.refresh()
    rows = list(library.rows.values())
    verdicts = verdicts_of(rows, reference, House.shipped())
    assert [verdicts.get(row.sha256) for row in sorted(rows, key=lambda row: row.name)] == [None, "right"]


@pytest.mark.parametrize(
    ("then", "says"),
    [
        ("2026-11-25 09:05", "today 09:05"),
        ("2026-11-24 09:05", "24 Nov"),
        ("2024-02-29 09:05", "29 Feb 2024"),
        ("2027-01-01 00:00", "1 Jan 2027"),
    ],
)
def test_when_a_card_was_changed(tmp_path: Path, then: str, says: str) -> None:
    path = put(tmp_path, "Rod 1")
    seconds = time.mktime(time.strptime(then, "%Y-%m-%d %H:%M"))
    os.utime(path, (seconds, seconds))
    library = Library(tmp_path)
    library.refresh()
    (row,) = library.rows.values()
    assert changed_words(row, time.mktime(time.strptime("2026-11-25 12:00", "%Y-%m-%d %H:%M"))) == says
