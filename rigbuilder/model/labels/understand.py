"""One label in, what it says out."""

from rigbuilder.model.labels.label import Label
from rigbuilder.model.labels.line import read_line
from rigbuilder.model.labels.lure import read_lure
from rigbuilder.model.labels.reel import read_reel
from rigbuilder.model.labels.rod import read_rod
from rigbuilder.model.labels.understood import Doubt, LabelKind, Understanding

MAX_TEXT = 400
_READERS = {"rod": read_rod, "reel": read_reel, "line": read_line, "lure": read_lure}


def understand(kind: LabelKind, text: str) -> Understanding:
    """What the label ``text`` of a rod, reel, line or lure says, part by part.

    Never raises for any text: what has no clear meaning is listed as doubtful,
    the rest as not understood.
    """
    if len(text) > MAX_TEXT:
        shown = text[:60] + "…"
        why = f"the text has {len(text)} characters; a label has at most {MAX_TEXT}"
        return Understanding(kind, {}, doubtful=(Doubt(shown, why, 0, len(text)),))
    label = Label(kind, text)
    _READERS[kind](label)
    return label.finish()
