"""What the library does to the very card that is on the bench: there it is edited, not behind its back."""

from pathlib import Path
from typing import Any

from rigbuilder.store.errors import StoreError
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.desk import Desk
from rigbuilder.viewmodels.library_done import Deed
from rigbuilder.viewmodels.place import Place


class OnBench:
    """The card on the bench as the library sees it."""

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._desk, self._bench = desk, bench
        self._taken_off: dict[str, bool] = {}

    def has(self, path: Path) -> bool:
        """Whether a file is the card on the bench."""
        return self._desk.place.is_at(path)

    def set_field(self, field: str, value: Any, what: str) -> Deed:
        """Change a field on the bench as an undoable edit; saved at once where nothing else waits to be."""
        before = self._bench.document.get(field)
        dirty = self._desk.is_dirty
        self._bench.settle()
        self._bench.edit(field, value)
        self._bench.settle()
        says = f"The card on the bench is now {what}." if what else "The card on the bench was changed."
        if dirty:
            says += " It has other changes: save it when you are done."
        elif not (outcome := self._desk.save()).done:
            return Deed(says, troubles=(f"{outcome.happened} {outcome.advice}",))
        return Deed(says, lambda: self.set_field(field, before, _quoted(before)), _paths(self._desk))

    def deleted(self, path: Path) -> None:
        """Leave the rig on the bench without a file when its card was deleted."""
        if not self.has(path):
            return
        self._taken_off[self._identity()] = self._desk.is_dirty
        self._desk.place.let_go()
        self._desk.place = Place()
        self._bench.undo_stack.resetClean()
        self._desk.state_changed.emit()

    def came_back(self, path: Path) -> None:
        """Give the rig on the bench its file again when its card was brought back."""
        if self._desk.path is not None or self._identity() not in self._taken_off:
            return
        try:
            loaded = self._desk.store.load(path)
        except StoreError:
            return
        if loaded.document.get("id") != self._identity():
            return
        del self._taken_off[self._identity()]
        self._desk.place = Place(path, loaded.fingerprint)
        self._desk.place.announce(force=True)
        if loaded.document == self._desk.document:
            self._bench.undo_stack.setClean()
        self._desk.state_changed.emit()

    def _identity(self) -> str:
        return str(self._desk.document.get("id"))


def _quoted(value: object) -> str:
    return f"“{value}”" if isinstance(value, str) else ""


def _paths(desk: Desk) -> tuple[Path, ...]:
    return () if desk.path is None else (desk.path,)
