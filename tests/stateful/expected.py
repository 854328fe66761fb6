"""What the desk should be like after each step: plain lists of documents, no Qt and no disk."""

from dataclasses import dataclass, field

from rigbuilder.model.document import Document


@dataclass
class Expected:
    """Documents to go back and forth to, and which of them the file holds."""

    now: Document = field(default_factory=dict)
    past: list[Document] = field(default_factory=list)
    future: list[Document] = field(default_factory=list)
    fields: list[str] = field(
        default_factory=list
    )  # in which field each step was made, "" where typing ended
    undone: list[str] = field(default_factory=list)
    saved: int | None = 0  # the number of steps that lead to what the file holds; None: no number does

    @property
    def dirty(self) -> bool:
        """Whether something is in no file."""
        return self.saved != len(self.past)

    def start(self, document: Document, *, saved: bool = True) -> None:
        """Begin anew with a card as it is."""
        self.now, self.past, self.future, self.fields, self.undone = document, [], [], [], []
        self.saved = 0 if saved else None

    def edit(self, after: Document, name: str) -> None:
        """Make an edit. Typing on in one field stays one step; back at its start it is none."""
        if after == self.now:
            return
        if self.saved is not None and self.saved > len(self.past):
            self.saved = None  # it could only be redone to, and that way is gone
        self.future, self.undone = [], []
        if name and self.past and self.fields[-1] == name and self.saved != len(self.past):
            if after == self.past[-1]:
                self.past.pop()
                self.fields.pop()
            self.now = after
        else:
            self.past.append(self.now)
            self.fields.append(name)
            self.now = after

    def settle(self) -> None:
        """End the run of typing."""
        if self.fields and not self.future:
            self.fields[-1] = ""

    def undo(self) -> None:
        """Go one step back."""
        if self.past:
            self.future.append(self.now)
            self.undone.append(self.fields.pop())
            self.now = self.past.pop()

    def redo(self) -> None:
        """Go one step forth again."""
        if self.future:
            self.past.append(self.now)
            self.fields.append(self.undone.pop())
            self.now = self.future.pop()

    def save(self) -> None:
        """The file holds what is there now."""
        self.saved = len(self.past)
