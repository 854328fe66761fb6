"""The class at one glance: every rule beside every junior, and rigs that are right."""

from rigbuilder.lessons.classroom import Stand, classroom
from rigbuilder.lessons.progress import Answered, Progress

STRONG, WORN, KINKED = "leader-stronger-than-main", "line-worn", "line-kinked"


def _class() -> list[Progress]:
    mia = (Answered(lesson="one", rig=0, not_yet=(STRONG,)), Answered(lesson="one", rig=1, right=True))
    tom = (
        Answered(lesson="one", rig=0, not_yet=(STRONG, WORN)),
        Answered(lesson="two", rig=3, understood=(WORN,)),
    )
    return [Progress(name="Mia", answers=mia), Progress(name="Tom", answers=tom), Progress(name="Ana")]


def test_every_rule_stands_beside_every_junior_what_is_most_open_first() -> None:
    room = classroom(_class(), [KINKED, WORN])
    assert room.juniors == ("Mia", "Tom", "Ana")
    assert [(row.rule, row.stands) for row in room.rules] == [
        (STRONG, (Stand.NOT_YET, Stand.NOT_YET, Stand.NOT_MET)),
        (WORN, (Stand.NOT_MET, Stand.UNDERSTOOD, Stand.NOT_MET)),
        (KINKED, (Stand.NOT_MET, Stand.NOT_MET, Stand.NOT_MET)),
    ]
    assert [(right.seen_as_right, right.total) for right in room.right] == [(1, 1), (0, 0), (0, 0)]


def test_a_class_of_nobody_has_no_columns() -> None:
    assert classroom([], [WORN]).rules[0].stands == ()
