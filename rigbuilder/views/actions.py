"""Every action of the window as data: words, keys, drawing. Menus and the overview of keys read this."""

from dataclasses import dataclass

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QKeySequence, QUndoStack

from rigbuilder.views.icons import icon
from rigbuilder.views.theme_look import Look

_Key = QKeySequence.StandardKey


@dataclass(frozen=True, slots=True)
class Spec:
    """One action; ``keys`` are standard keys or texts such as ``Ctrl+1``."""

    name: str
    text: str
    keys: tuple[QKeySequence.StandardKey | str, ...] = ()
    drawing: str = ""
    tip: str = ""
    group: str = ""


MENUS: tuple[tuple[str, tuple[Spec | str, ...]], ...] = (
    (
        "&File",
        (
            Spec("new", "&New…", (_Key.New,), "new", "Start from the usual rig of a technique, or empty"),
            Spec("open", "&Open…", (_Key.Open,), "open", "Open a card"),
            "recent",
            "",
            Spec("save", "&Save", (_Key.Save,), "save", "Save the card"),
            Spec("save-as", "Save &as…", ("Ctrl+Shift+S",), "", "Save the card in another place"),
            "",
            Spec("print", "&Print…", (_Key.Print,), "print", "Print the rig on one sheet of paper"),
            Spec("save-sheet", "Save s&heet…", ("Ctrl+E",), "export", "Save the sheet as a PDF"),
            Spec("save-drawing", "Save &drawing…", ("Ctrl+Shift+E",), "", "Save the drawn rig as a picture"),
            "",
            Spec("quit", "&Quit", ("Ctrl+Q",), "", "Close the window"),
        ),
    ),
    (
        "&Edit",
        (
            "undo",
            "redo",
            "",
            Spec("set", "&Set what is assumed here", ("Ctrl+Return",), "", "In the field that has the focus"),
            Spec(
                "unsay", "Say &nothing here", ("Ctrl+Shift+Backspace",), "", "In the field that has the focus"
            ),
            Spec("set-all", "Set &all that is assumed", (), "", "Put everything that is assumed on the card"),
            "",
            Spec("rename", "Na&me of the card", ("F2",), "", "Go to the name of the card"),
        ),
    ),
    (
        "&Cards",
        (
            Spec("library", "&Library…", ("Ctrl+L",), "card", "All your cards: search, sort, compare, share"),
            Spec("versions", "Earlier &versions…", ("Ctrl+H",), "", "Bring back how this card was before"),
            Spec("compare", "&Compare with a card…", ("Ctrl+K",), "compare", "Side by side with this rig"),
            "",
            Spec("copy-card", "Copy the card as te&xt", ("Ctrl+Shift+C",), "copy", "To send it or paste it"),
            Spec("paste-card", "&Paste a card", ("Ctrl+Shift+V",), "", "Bring the card in a text in"),
            Spec("import", "&Import cards…", (), "", "Bring a set of cards, or one, into the library"),
        ),
    ),
    (
        "&Bench",
        (
            Spec("fill", "&Fill the reel…", ("Ctrl+R",), "reel", "Backing, main line, steps and cost"),
            Spec("chain", "&Joints and drag…", ("Ctrl+J",), "knot", "What breaks first, knots, drag, care"),
            Spec(
                "middle", "One rod for &two jobs…", ("Ctrl+M",), "", "The middle way between two techniques"
            ),
            "",
            Spec("house", "&House rules…", ("Ctrl+,",), "settings", "What the coach decides differently"),
        ),
    ),
    (
        "&View",
        (
            Spec("imperial", "&Pounds and inches", ("Ctrl+Shift+L",), group="units"),
            Spec("metric", "&Kilograms and millimetres", ("Ctrl+Shift+K",), group="units"),
            "",
            Spec("system", "As the &system has it", group="theme"),
            Spec("light", "&Light", group="theme"),
            Spec("dark", "&Dark", group="theme"),
            "",
            Spec(
                "show", "Sho&w on the whole screen", ("F5",), "show", "One thing at a time, for a club room"
            ),
            "",
            Spec("zoom-in", "La&rger", (_Key.ZoomIn, "Ctrl+="), "zoom-in"),
            Spec("zoom-out", "S&maller", (_Key.ZoomOut,), "zoom-out"),
            Spec("zoom-normal", "&Normal size", ("Ctrl+0",)),
        ),
    ),
    (
        "&Go",
        (
            Spec("go-form", "The &form", ("Ctrl+1",)),
            Spec("go-drawing", "The &drawing", ("Ctrl+2",)),
            Spec("go-chart", "The &line chart", ("Ctrl+3",)),
            Spec("go-questions", "The &questions", ("Ctrl+4",)),
            Spec("go-reasons", "The &reasons", ("Ctrl+5",)),
            Spec("go-assumed", "What is &assumed", ("Ctrl+6",)),
        ),
    ),
    (
        "&Help",
        (
            Spec("help", "&Help on this field", ("F1",), "help"),
            Spec("glossary", "&Words of the trade…", ("Shift+F1",), "", "What the words mean"),
            Spec("shortcuts", "&Keys", ("Ctrl+?",)),
            Spec("about", "&About Rigbuilder"),
        ),
    ),
)


class Actions(QObject):
    """The actions by name; undo and redo carry the text of what they would do."""

    def __init__(self, stack: QUndoStack, look: Look, parent: QObject) -> None:
        super().__init__(parent)
        self._look = look
        self.undo = stack.createUndoAction(self, "&Undo")
        self.redo = stack.createRedoAction(self, "&Redo")
        self.undo.setShortcuts([QKeySequence("Ctrl+Z")])
        self.redo.setShortcuts([QKeySequence("Ctrl+Shift+Z"), QKeySequence("Ctrl+Y")])
        self._by_name: dict[str, QAction] = {"undo": self.undo, "redo": self.redo}
        self._drawings = {"undo": "undo", "redo": "redo"}
        for _, entries in MENUS:
            for entry in entries:
                if isinstance(entry, Spec):
                    self._by_name[entry.name] = self._made(entry)
        look.changed.connect(lambda _: self._draw())
        self._draw()

    def __getitem__(self, name: str) -> QAction:
        return self._by_name[name]

    def all(self) -> list[QAction]:
        """Return every action, in the order of the menus."""
        return list(self._by_name.values())

    def _made(self, spec: Spec) -> QAction:
        action = QAction(spec.text, self)
        action.setObjectName(f"action:{spec.name}")
        action.setShortcuts([QKeySequence(key) for key in spec.keys])
        action.setStatusTip(spec.tip)
        if spec.drawing:
            self._drawings[spec.name] = spec.drawing
        action.setCheckable(bool(spec.group))
        return action

    def _draw(self) -> None:
        for name, drawing in self._drawings.items():
            self._by_name[name].setIcon(icon(drawing, self._look.theme))
