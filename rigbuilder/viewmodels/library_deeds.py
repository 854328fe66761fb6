"""What can be done with cards in the library. Every deed says what it did and knows its way back."""

from collections.abc import Sequence
from pathlib import Path

from rigbuilder.store.bin import Binned
from rigbuilder.store.cards import CardStore
from rigbuilder.store.codec import Document
from rigbuilder.store.errors import StoreError, shown
from rigbuilder.store.importing import import_cards
from rigbuilder.store.listing import read_entry
from rigbuilder.store.rows import fold
from rigbuilder.store.sets import export_set, from_text, read_set, to_text
from rigbuilder.viewmodels.library_bench import OnBench
from rigbuilder.viewmodels.library_done import Deed


class Deeds:
    """Renames, copies, tags, deletes and brings back cards; the card on the bench is changed there."""

    def __init__(self, store: CardStore, bench: OnBench) -> None:
        self._store, self._bench = store, bench

    def rename(self, path: Path, title: str) -> Deed:
        """Give a card another name."""
        title = title.strip()
        before = _name(path)
        if not title or title == before:
            return Deed()
        if self._bench.has(path):
            return self._bench.set_field("name", title, f"“{title}”")
        try:
            saved = self._store.rename(path, title)
        except StoreError as trouble:
            return Deed(troubles=(str(trouble),))
        return Deed(
            f"Renamed to “{title}”.", lambda: self.rename(saved.path, before), (saved.path,), saved.notes
        )

    def tag(self, paths: Sequence[Path], add: Sequence[str], take: Sequence[str] = ()) -> Deed:
        """Put tags on cards and take others away."""
        wanted = {path: retagged(_tags(path), add, take) for path in paths}
        return self.set_tags(wanted)

    def set_tags(self, wanted: dict[Path, tuple[str, ...]]) -> Deed:
        """Give cards these tags and no others."""
        before, troubles, done = {}, [], []
        for path, tags in wanted.items():
            old = _tags(path)
            if tags == old:
                continue
            if self._bench.has(path):
                self._bench.set_field("tags", list(tags), "")
            else:
                try:
                    loaded = self._store.load(path)
                    document = loaded.document | {"tags": list(tags)}
                    self._store.save(document, path, expected=loaded.fingerprint)
                except StoreError as trouble:
                    troubles.append(str(trouble))
                    continue
            before[path] = old
            done.append(path)
        says = f"Tags changed on {cards(len(done))}." if done else ""
        return Deed(says, (lambda: self.set_tags(before)) if done else None, tuple(done), tuple(troubles))

    def duplicate(self, paths: Sequence[Path]) -> Deed:
        """Make a copy of each card."""
        made, troubles = [], []
        for path in paths:
            try:
                made.append(self._store.duplicate(path).path)
            except StoreError as trouble:
                troubles.append(str(trouble))
        says = f"{cards(len(made), 'copy', 'copies')} made." if made else ""
        return Deed(says, (lambda: self.delete(made)) if made else None, tuple(made), tuple(troubles))

    def delete(self, paths: Sequence[Path]) -> Deed:
        """Move cards, also broken ones, into the bin."""
        binned: list[Binned] = []
        troubles = []
        for path in paths:
            try:
                binned.append(self._store.delete(path))
            except StoreError as trouble:
                troubles.append(str(trouble))
            else:
                self._bench.deleted(path)
        said = f"“{binned[0].name}”" if len(binned) == 1 else cards(len(binned))
        says = f"{said} deleted." if binned else ""
        return Deed(says, (lambda: self.bring_back(binned)) if binned else None, (), tuple(troubles))

    def bring_back(self, binned: Sequence[Binned]) -> Deed:
        """Put deleted cards back where they were."""
        back, troubles = [], []
        for card in binned:
            try:
                path = self._store.restore(card)
            except StoreError as trouble:
                troubles.append(str(trouble))
            else:
                back.append(path)
                self._bench.came_back(path)
        says = f"{cards(len(back))} brought back." if back else ""
        return Deed(says, (lambda: self.delete(back)) if back else None, tuple(back), tuple(troubles))

    def export(self, paths: Sequence[Path], target: Path) -> Deed:
        """Pack cards into one file; the person was asked about a file in its place."""
        try:
            documents = [self._store.load(path).document for path in paths]
            notes = export_set(documents, target)
        except StoreError as trouble:
            return Deed(troubles=(f"Nothing was exported. {trouble}",))
        return Deed(f"{cards(len(documents))} packed into “{shown(target.name)}”.", None, (target,), notes)

    def take_in(self, path: Path, folder: Path) -> Deed:
        """Bring all cards of a set, or a single card from elsewhere, into the folder that is shown."""
        try:
            return self._taken_in(read_set(path), folder)
        except StoreError as trouble:
            return Deed(troubles=(f"Nothing was imported. {trouble}",))

    def paste(self, text: str, folder: Path) -> Deed:
        """Bring the cards in a text into the folder that is shown."""
        try:
            return self._taken_in(from_text(text), folder)
        except StoreError as trouble:
            return Deed(troubles=(f"Nothing was pasted. {trouble}",))

    def as_text(self, paths: Sequence[Path]) -> tuple[str, Deed]:
        """Return cards as text that can be sent and pasted."""
        try:
            text = "\n".join(to_text(self._store.load(path).document) for path in paths)
        except StoreError as trouble:
            return "", Deed(troubles=(str(trouble),))
        return text, Deed(f"{cards(len(paths))} copied as text.")

    def _taken_in(self, documents: list[Document], folder: Path) -> Deed:
        done = import_cards(documents, folder)
        where = "" if folder == self._store.folder else f" into “{shown(folder.name)}”"
        said = [f"{cards(len(done.paths))} imported{where}."] if done.paths else []
        if done.present:
            said.append(
                f"{cards(len(done.present))} {'was' if len(done.present) == 1 else 'were'} here already."
            )
        if done.renewed:
            said.append(f"{cards(done.renewed)} came in beside another of the same origin.")
        paths = list(done.paths)
        return Deed(
            " ".join(said) or "There were no cards in it.",
            (lambda: self.delete(paths)) if paths else None,
            (*done.paths, *done.present),
        )


def text_of(document: Document) -> tuple[str, Deed]:
    """Return one card as text that can be sent and pasted."""
    try:
        return to_text(document), Deed("The card was copied as text.")
    except StoreError as trouble:
        return "", Deed(troubles=(str(trouble),))


def cards(count: int, one: str = "card", many: str = "cards") -> str:
    """Return ``1 card`` or ``3 cards``."""
    return f"1 {one}" if count == 1 else f"{count:,} {many}"


def retagged(tags: Sequence[str], add: Sequence[str], take: Sequence[str] = ()) -> tuple[str, ...]:
    """Return tags with some added and some taken away, each once, whatever the case of its letters."""
    gone = {fold(tag) for tag in take}
    kept = [tag for tag in tags if fold(tag) not in gone]
    known = {fold(tag) for tag in kept}
    for tag in add:
        if fold(tag) not in known:
            kept.append(tag)
            known.add(fold(tag))
    return tuple(kept)


def tags_in(text: str) -> tuple[str, ...]:
    """Return the tags in a text in which they are separated by commas."""
    return retagged((), [tag for tag in (" ".join(part.split()) for part in text.split(",")) if tag])


def _name(path: Path) -> str:
    document = read_entry(path).document or {}
    name = document.get("name")
    return name if isinstance(name, str) else ""


def _tags(path: Path) -> tuple[str, ...]:
    tags = (read_entry(path).document or {}).get("tags")
    return tuple(tag for tag in tags if isinstance(tag, str)) if isinstance(tags, list) else ()
