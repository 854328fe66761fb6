"""A store used at random must always hold what was acknowledged."""

import shutil
import tempfile
from pathlib import Path

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import Bundle, RuleBasedStateMachine, consumes, initialize, invariant, rule

from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore, Change
from rigbuilder.store.drafts import Drafts
from rigbuilder.store.errors import ChangedOnDisk, Gone
from rigbuilder.store.history import History
from rigbuilder.store.importing import import_cards
from rigbuilder.store.sets import from_text, parse_set, set_bytes, to_text

TITLES = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)


class RandomUse(RuleBasedStateMachine):
    """``held``: what every card file must hold; ``binned``: what lies in the bin."""

    cards = Bundle("cards")
    deleted = Bundle("deleted")

    @initialize()
    def begin(self) -> None:
        self.root = Path(tempfile.mkdtemp())
        self.store = CardStore(
            self.root / "cards", history=History(self.root / "history"), bin_=Bin(self.root / "bin")
        )
        self.drafts = Drafts(self.root / "drafts")
        self.store.create({"format": "rigbuilder.card", "version": 1, "name": "first"})
        self.held = {entry.path: entry.document for entry in self.store.entries()}
        self.binned: dict[Path, dict[str, object]] = {}

    def teardown(self) -> None:
        shutil.rmtree(self.root)

    @rule(target=cards, title=TITLES)
    def create(self, title):
        saved = self.store.create({"format": "rigbuilder.card", "version": 1, "name": title})
        assert saved.path not in self.held
        self.held[saved.path] = saved.document
        return saved

    @rule(target=cards, card=consumes(cards), notes=TITLES)
    def save(self, card, notes):
        document = card.document | {"notes": notes}
        saved = self.store.save(document, card.path, expected=card.fingerprint)
        self.held[saved.path] = document
        return saved

    @rule(target=cards, card=consumes(cards), notes=TITLES)
    def save_after_someone_else(self, card, notes):
        theirs = self.store.save(card.document | {"notes": notes + "!"}, card.path, expected=card.fingerprint)
        self.held[card.path] = theirs.document
        mine = card.document | {"notes": notes + "?"}
        try:
            self.store.save(mine, card.path, expected=card.fingerprint)
        except ChangedOnDisk:
            aside = self.store.keep_aside(mine, card.path)
            self.held[aside.path] = aside.document
        else:
            assert theirs.fingerprint.same_content(card.fingerprint)
            self.held[card.path] = mine
            return self.store.load(card.path)
        return theirs

    @rule(target=cards, card=consumes(cards))
    def save_after_removal(self, card):
        card.path.unlink()
        assert self.store.change(card.path, card.fingerprint) is Change.GONE
        try:
            self.store.save(card.document, card.path, expected=card.fingerprint)
        except Gone:
            return self.store.save(card.document, card.path, expected=None)
        raise AssertionError("a removed card was not noticed")

    @rule(target=cards, card=cards)
    def duplicate(self, card):
        copy = self.store.duplicate(card.path)
        self.held[copy.path] = copy.document
        return copy

    @rule(target=cards, card=consumes(cards), title=TITLES)
    def rename(self, card, title):
        renamed = self.store.rename(card.path, title)
        del self.held[card.path]
        assert renamed.path not in self.held
        self.held[renamed.path] = card.document | {"name": title}
        return renamed

    @rule(target=deleted, card=consumes(cards))
    def delete(self, card):
        binned = self.store.delete(card.path)
        self.binned[binned.path] = self.held.pop(card.path)
        return binned

    @rule(target=cards, binned=consumes(deleted))
    def restore(self, binned):
        path = self.store.restore(binned)
        assert path not in self.held
        self.held[path] = self.binned.pop(binned.path)
        return self.store.load(path)

    @rule(card=cards)
    def share(self, card):
        assert from_text(to_text(card.document)) == [card.document]
        cards = parse_set(set_bytes(list(self.held.values())))
        assert cards == list(self.held.values())
        assert import_cards(cards, self.root / "cards").paths == ()

    @rule(card=cards, notes=TITLES)
    def draft(self, card, notes):
        typed = card.document | {"notes": notes}
        self.drafts.write(typed, card.path, card.fingerprint)
        assert self.drafts.all()[0].document == typed
        self.drafts.remove(typed, card.path)
        assert self.drafts.all() == []

    @invariant()
    def everything_acknowledged_is_there(self) -> None:
        assert {entry.path: entry.document for entry in self.store.entries()} == self.held
        assert {entry.path: entry.document for entry in self.store.bin.entries()} == self.binned
        assert not list(self.root.rglob(".rigbuilder-*"))


TestRandomUse = RandomUse.TestCase
TestRandomUse.settings = settings(max_examples=15, stateful_step_count=25, deadline=None)
