"""The class as the coach sees it: a table in words, and the same as comma-separated values."""

from dataclasses import dataclass

from rigbuilder.lessons.classroom import Classroom, Stand, classroom
from rigbuilder.lessons.progress import RightRigs
from rigbuilder.plans.sheet import Sheet, as_csv
from rigbuilder.review.rules.book import RULES
from rigbuilder.viewmodels.lesson_hall import LessonHall

_MARKS = {Stand.UNDERSTOOD: "✓ understood", Stand.NOT_YET: "· not yet", Stand.NOT_MET: ""}
_RIGHT = "A right rig is called right"


@dataclass(frozen=True, slots=True)
class ClassRow:
    """One line: the rule in words, its name ("" for what is no rule), and a cell for each junior."""

    words: str
    rule: str
    cells: tuple[str, ...]
    spoken: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ClassShown:
    """The whole table; ``summary`` says how much there is, or why there is nothing."""

    juniors: tuple[str, ...]
    rows: tuple[ClassRow, ...]
    summary: str


def class_in(hall: LessonHall) -> ClassShown:
    """Return everybody whose progress is kept; a file that cannot be read is told and left out."""
    juniors = hall.juniors()
    for junior in juniors:
        if junior.trouble:
            hall.said.emit(junior.trouble)
    known = [hall.progress(junior.name) for junior in juniors if not junior.trouble]
    lessons = [row.lesson for row in hall.lessons() if row.lesson is not None]
    taught = {rule for lesson in lessons for rig in lesson.rigs for rule in rig.meant}
    return class_shown(classroom([each for each in known if each is not None], taught))


def class_shown(room: Classroom) -> ClassShown:
    """Return the class in words."""
    if not room.juniors:
        return ClassShown((), (), "Nobody has taken a lesson on this machine yet.")
    what = {rule.name: rule.what for rule in RULES}
    rows = [
        ClassRow(
            what.get(row.rule, row.rule),
            row.rule,
            tuple(_MARKS[stand] for stand in row.stands),
            tuple(stand.value for stand in row.stands),
        )
        for row in room.rules
    ]
    right = tuple(_right_words(each) for each in room.right)
    rows.append(
        ClassRow(_RIGHT, "", tuple("" if words == Stand.NOT_MET else words for words in right), right)
    )
    juniors = f"{len(room.juniors)} junior{'s' if len(room.juniors) != 1 else ''}"
    open_ = sum(Stand.NOT_YET in row.stands for row in room.rules)
    summary = (
        f"{juniors}. What most have not understood yet stands first: {open_} "
        f"rule{' is' if open_ == 1 else 's are'} still open with somebody. An empty cell: not met so far."
    )
    return ClassShown(room.juniors, tuple(rows), summary)


def class_csv(shown: ClassShown) -> str:
    """Return the table as comma-separated values; no name can start a formula in a spreadsheet."""
    rows = tuple((row.words, row.rule, *row.spoken) for row in shown.rows)
    return as_csv(Sheet("The class", ("What it is about", "Rule", *shown.juniors), rows))


def _right_words(found: RightRigs) -> str:
    return f"{found.seen_as_right} of {found.total}" if found.total else str(Stand.NOT_MET)
