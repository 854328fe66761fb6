"""A random walk over the desk: edits, undos, saves, reopenings, other writers, crashes; checked each time.

Beside the real desk walks :class:`Expected`. Both must agree on the document,
on what undo and redo lead to, on whether something is unsaved, on what the
file holds, and on the draft that a crash would leave.

By hand, for as long as you like:

    python -m tests.stateful.walk [STEPS] [SEED]
"""

import json
import random
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, cast

from PySide6.QtCore import QCoreApplication

from rigbuilder.model.document import Document, drop, put, put_all
from rigbuilder.model.reading import Reading
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference, load
from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.drafts import Drafts
from rigbuilder.store.history import History
from rigbuilder.store.process import Process, this_process
from rigbuilder.store.settings import SettingsFile
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.desk import Desk
from rigbuilder.viewmodels.draftkeeper import DraftKeeper
from rigbuilder.viewmodels.outcome import Fate
from rigbuilder.viewmodels.preferences import Preferences
from rigbuilder.viewmodels.slate import Slate
from tests.stateful.expected import Expected

FIELDS = ("name", "notes", "drag", "main.test", "main.type", "lure.weight", "leader.length", "water.clarity")
VALUES = (
    "",
    "6 lb",
    "50 lb",
    "braid",
    "5/8 oz",
    "1.5 m",
    "Rod 3",
    "Привет",
    "\u202edrawkcab",
    "a: b/c",
    "x" * 300,
)
TECHNIQUES = ("frog", "drop-shot", "flip-jig")


class UnreadSlate(Slate):
    """A slate that does not work out what the card means: the walk is about the card."""

    def __init__(self, reference: Reference) -> None:
        super().__init__({}, reference)
        self._reading = Reading({}, None, ())

    def _show(self, document: Document) -> None:
        self._document = document
        self.document_changed.emit(document)


class Walk:
    """One walk; ``reviewed`` puts the whole bench with its review on the desk."""

    def __init__(self, folder: Path, seed: int, *, reviewed: bool = False) -> None:
        self._folder, self._random, self._reviewed = folder, random.Random(seed), reviewed
        self._reference = load()
        self._runs = 0
        self._expected = Expected()
        self._on_disk: dict[Path, Document] = {}
        self.done: Counter[str] = Counter()
        self._begin()
        self._desk.new("frog")
        self._expected.start(self._slate.document)
        self._steps: Mapping[str, tuple[int, Callable[[], None]]] = {
            "type": (45, self._type),
            "clear": (5, self._clear),
            "several": (5, self._several),
            "settle": (6, self._settle),
            "undo": (16, self._undo),
            "redo": (10, self._redo),
            "save": (6, self._save),
            "save as": (1, self._save_as),
            "reopen": (2, self._reopen),
            "new": (1, self._new),
            "other writer": (1, self._other_writer),
            "removed": (1, self._removed),
            "crash": (1, self._crash),
        }

    def step(self) -> None:
        """Do something at random and check everything."""
        names = list(self._steps)
        (name,) = self._random.choices(names, [self._steps[each][0] for each in names])
        self._steps[name][1]()
        self.done[name] += 1
        self._check()

    def end(self) -> None:
        """Undo everything, redo everything: both ends must be what they were."""
        last, first = self._expected.now, (self._expected.past or [self._expected.now])[0]
        steps = len(self._expected.past)
        for _ in range(steps):
            self._undo()
        assert self._slate.document == first
        self._check()
        for _ in range(steps):
            self._redo()
        assert self._slate.document == last
        self._check()
        self._desk.leave()

    def _begin(self) -> None:
        """Start the program, as one that will have ended when the next one looks for it."""
        self._runs += 1
        here = this_process()
        process = Process(here.host, here.boot, 2**22 + self._runs, "1")
        self._store = CardStore(
            self._folder / "cards", history=History(self._folder / "history"), bin_=Bin(self._folder / "bin")
        )
        self._slate = (
            Bench({}, self._reference, House.shipped()) if self._reviewed else UnreadSlate(self._reference)
        )
        self._drafts = Drafts(self._folder / "drafts", process)
        self._keeper = DraftKeeper(self._drafts, self._store, self._slate)
        preferences = Preferences(SettingsFile(self._folder / "settings.json"), self._slate)
        self._desk = Desk(cast(Bench, self._slate), self._store, self._keeper, preferences, self._slate)

    def _type(self) -> None:
        name, value = self._random.choice(FIELDS), self._random.choice(VALUES)
        self._expected.edit(put(self._slate.document, name, value), name)
        self._slate.edit(name, value)

    def _clear(self) -> None:
        name = self._random.choice(("notes", "drag"))
        self._expected.edit(drop(self._slate.document, name), name)
        self._slate.clear(name)

    def _several(self) -> None:
        changes: dict[str, Any] = {
            name: self._random.choice(VALUES) for name in self._random.sample(FIELDS, 2)
        }
        self._expected.edit(put_all(self._slate.document, changes), "")
        self._slate.apply(changes, "take a remedy")

    def _settle(self) -> None:
        self._expected.settle()
        self._slate.settle()

    def _undo(self) -> None:
        self._expected.undo()
        self._slate.undo_stack.undo()

    def _redo(self) -> None:
        self._expected.redo()
        self._slate.undo_stack.redo()

    def _save(self) -> None:
        assert self._desk.save().done
        self._was_saved()

    def _save_as(self) -> None:
        path = self._folder / "elsewhere" / f"{self._random.randrange(5)}.rigcard"
        path.parent.mkdir(exist_ok=True)
        assert self._desk.save_as(path, over=path.exists()).done
        self._was_saved()

    def _was_saved(self) -> None:
        self._expected.save()
        assert self._desk.path is not None
        self._on_disk[self._desk.path] = self._desk.document

    def _reopen(self) -> None:
        if not self._on_disk:
            return
        path = self._random.choice(sorted(self._on_disk))
        assert self._desk.open(path).done
        self._expected.start(self._on_disk[path])

    def _new(self) -> None:
        self._desk.new(self._random.choice(TECHNIQUES))
        self._expected.start(self._slate.document)

    def _other_writer(self) -> None:
        """Somebody else changes the file: saving asks, and no answer loses either version."""
        path = self._desk.path
        if path is None:
            return
        theirs = self._on_disk[path] | {"notes": f"theirs {self._random.random()}"}
        loaded = self._store.load(path)
        self._store.save(theirs, path, expected=loaded.fingerprint)
        self._on_disk[path] = theirs
        mine = self._desk.document
        outcome = self._desk.save()
        if mine == theirs:
            assert outcome.done
            self._was_saved()
            return
        assert outcome.fate is Fate.CHANGED
        assert self._desk.document == mine
        if self._random.random() < 0.5:
            assert self._desk.keep_both().done
            assert self._desk.path != path
            self._was_saved()
        else:
            assert self._desk.reload().done
            self._expected.start(theirs)

    def _removed(self) -> None:
        """Somebody removes the file: the work stays, and is saved again."""
        path = self._desk.path
        if path is None:
            return
        path.unlink()
        self._type()
        if self._desk.is_dirty:
            assert self._desk.save().fate is Fate.GONE
        assert self._desk.save(again=True).done
        self._was_saved()

    def _crash(self) -> None:
        """The program is killed a moment after the last key; the next start offers what was unsaved."""
        self._keeper.flush()
        document, dirty, path = self._desk.document, self._desk.is_dirty, self._desk.path
        self._slate.deleteLater()
        self._begin()
        offers = self._keeper.offers()
        held = path is not None and self._on_disk[path] == document
        if dirty and not held:
            (offer,) = offers
            assert offer.draft.document == document
            self._desk.recover(offer)
            self._expected.start(self._slate.document, saved=False)
            assert self._desk.document == document
        else:
            assert offers == []
            self._desk.new("frog")
            self._expected.start(self._slate.document)

    def _check(self) -> None:
        stack, expected = self._slate.undo_stack, self._expected
        assert self._slate.document == expected.now
        assert stack.index() == len(expected.past)
        assert stack.count() == len(expected.past) + len(expected.future)
        assert self._desk.is_dirty == expected.dirty
        if self._desk.path is not None and (not expected.dirty or self._random.random() < 0.02):
            told = json.loads(self._desk.path.read_bytes())
            assert told == self._on_disk[self._desk.path]
            if not expected.dirty:
                assert told == self._desk.document
        if self._random.random() < 0.05:
            self._keeper.flush()
            drafts = [draft.document for draft in self._drafts.all()]
            assert drafts == ([self._desk.document] if expected.dirty else [])


def main(arguments: list[str]) -> int:
    """Walk, and print what was done and how long it took."""
    steps = int(arguments[0]) if arguments else 100_000
    seed = int(arguments[1]) if len(arguments) > 1 else 7
    application = QCoreApplication.instance() or QCoreApplication([])
    began = time.perf_counter()
    with tempfile.TemporaryDirectory() as folder:
        walk = Walk(Path(folder), seed)
        for _ in range(steps):
            walk.step()
        walk.end()
    application.processEvents()
    for name, count in walk.done.most_common():
        print(f"{name:<14}{count:>9,}")
    print(f"{steps:,} steps, seed {seed}, {time.perf_counter() - began:.1f} s: no disagreement")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
