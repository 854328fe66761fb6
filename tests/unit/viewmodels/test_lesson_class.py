"""The class in words and as a table for a spreadsheet."""

import csv
from io import StringIO

from rigbuilder.lessons.classroom import classroom
from rigbuilder.lessons.progress import Answered, Progress
from rigbuilder.viewmodels.lesson_class import class_csv, class_shown

STRONG = "leader-stronger-than-main"
CLASS = [
    Progress(name="=1+1", answers=(Answered(lesson="one", rig=0, understood=(STRONG,)),)),
    Progress(name="Tom, the tall", answers=(Answered(lesson="one", rig=0, not_yet=(STRONG,)),)),
    Progress(name="Mia", answers=(Answered(lesson="one", rig=1, right=True),)),
]


def test_the_table_says_of_each_junior_how_a_rule_stands() -> None:
    shown = class_shown(classroom(CLASS))
    assert shown.rows[0].cells == ("✓ understood", "· not yet", "")
    assert shown.rows[0].spoken == ("understood", "not yet", "not met")
    assert shown.rows[-1].cells == ("", "", "1 of 1")
    assert shown.summary.startswith("3 juniors.")
    assert "1 rule is still open" in shown.summary


def test_the_table_as_a_file_keeps_commas_and_starts_no_formula() -> None:
    head, first, last = csv.reader(StringIO(class_csv(class_shown(classroom(CLASS)))))
    assert head[2:] == ["'=1+1", "Tom, the tall", "Mia"]
    assert first[1:] == [STRONG, "understood", "not yet", "not met"]
    assert last[2:] == ["not met", "not met", "1 of 1"]


def test_without_a_junior_it_says_so() -> None:
    assert class_shown(classroom([])).summary == "Nobody has taken a lesson on this machine yet."
