"""A lesson under way: every step kept, what was missed comes back, nothing lost after a kill."""

import signal
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication

from rigbuilder.lessons.document import Lesson, read_lesson
from rigbuilder.model.fields import Part
from rigbuilder.store.progress import ProgressStore
from rigbuilder.viewmodels.lesson import LessonRun
from rigbuilder.viewmodels.lesson_hall import LessonHall
from rigbuilder.viewmodels.lesson_shown import (
    FOUND,
    MISSED,
    hints_shown,
    marks_shown,
    outcome_shown,
    standings_shown,
    title_shown,
)
from tests.unit.lessons.cases import card, lesson, lesson_document, reference, shipped
from tests.unit.store.conftest import start_python  # noqa: F401 - a fixture
from tests.unit.viewmodels.parts import make_bench

LEADER = "leader-stronger-than-main"
KINKED = "line-kinked"


def _lesson() -> Lesson:
    rigs = [
        {"card": card("carolina", leader__test="25 lb"), "meant": [LEADER], "remark": "Mind the leader."},
        {"card": card("frog")},
        {"card": card("texas-open", main__condition="kinked"), "meant": [KINKED]},
    ]
    return read_lesson(lesson_document(*rigs), reference())


def _again() -> Lesson:
    rig = {"card": card("carolina", leader__test="25 lb", main__test="15 lb"), "meant": [LEADER]}
    return read_lesson(lesson_document(rig) | {"id": "other"}, reference())


def _run(folder: Path, *others: Lesson, name: str = "Mia") -> LessonRun:
    store = ProgressStore(folder)
    return LessonRun(
        _lesson(), Path("class.riglesson"), store.load(name), store, make_bench({}), others=others
    )


def _answer(run: LessonRun, part: Part | None = None, rule: str = "") -> None:
    said = run.sitting.said
    run.say(said.nothing() if part is None else said.marked(part).because(part, rule))
    run.show_reasons()


@pytest.mark.usefixtures("qapp")
class TestRun:
    """The run by itself."""

    def test_it_goes_from_rig_to_rig_and_ends(self, tmp_path: Path) -> None:
        run = _run(tmp_path)
        assert title_shown(run) == "Rig 1 of 3"
        _answer(run, Part.LEADER, LEADER)
        run.next()
        _answer(run)
        run.next()
        _answer(run, Part.MAIN, KINKED)
        run.next()
        assert run.rig is None
        assert title_shown(run) == "The lesson is done"
        assert [row.understood for row in standings_shown(run)] == [True, True]
        run.start_over()
        assert title_shown(run) == "Rig 1 of 3"

    def test_nothing_is_shown_before_something_is_said(self, tmp_path: Path) -> None:
        run = _run(tmp_path)
        run.show_reasons()
        run.next()
        run.say(run.sitting.said.marked(Part.LEADER))
        run.show_reasons()
        assert outcome_shown(run) is None
        assert title_shown(run) == "Rig 1 of 3"
        assert run.progress.answers == ()

    def test_the_reasons_stand_beside_what_was_said(self, tmp_path: Path) -> None:
        run = _run(tmp_path)
        _answer(run, Part.LEADER, LEADER)
        shown = outcome_shown(run)
        assert shown is not None
        assert [reason.state for reason in shown.reasons] == [FOUND]
        assert shown.opening == "You found all there is, and why."
        assert shown.remark == "Mind the leader."

    def test_what_was_marked_without_cause_is_said_without_scolding(self, tmp_path: Path) -> None:
        run = _run(tmp_path)
        _answer(run, Part.REEL, "spool-half-empty")
        shown = outcome_shown(run)
        assert shown is not None
        assert [reason.state for reason in shown.reasons] == [MISSED]
        assert shown.without_cause == (
            "You marked the reel. The review finds nothing against it on this rig.",
        )

    def test_an_answer_cannot_be_changed_once_the_reasons_are_shown(self, tmp_path: Path) -> None:
        run = _run(tmp_path)
        _answer(run)
        before = run.sitting
        run.say(run.sitting.said.marked(Part.LEADER))
        run.take_hint()
        run.show_reasons()
        assert run.sitting == before
        assert len(run.progress.answers) == 1

    def test_hints_come_in_steps_and_end(self, tmp_path: Path) -> None:
        run = _run(tmp_path)
        for count in (1, 2, 3, 3):
            run.take_hint()
            assert len(hints_shown(run)) == count
        one, two, three = hints_shown(run)
        assert one == "Look at what lies between main line and lure."
        assert "25 lb" in two
        assert "Where will it break?" in three

    def test_a_right_rig_has_hints_that_give_nothing_away(self, tmp_path: Path) -> None:
        run = _run(tmp_path)
        _answer(run, Part.LEADER, LEADER)
        run.next()
        for _ in range(3):
            run.take_hint()
        assert len(hints_shown(run)) == 3

    def test_a_mended_rig_is_told_and_the_card_is_put_back(self, tmp_path: Path) -> None:
        run = _run(tmp_path)
        run.bench.edit("leader.test", "12 lb")
        _answer(run, Part.LEADER, LEADER)
        shown = outcome_shown(run)
        assert shown is not None
        assert shown.mended == "You changed: leader test. With your change the rig is right."
        assert run.bench.text("leader.test") == "25 lb"

    def test_what_was_missed_comes_back_in_another_rig_and_the_lesson_goes_on(self, tmp_path: Path) -> None:
        run = _run(tmp_path, _again())
        for _ in range(3):
            _answer(run)  # "nothing is wrong" each time: the leader and the kink are missed
            run.next()
        assert run.sitting.again == ("other", 0)
        assert run.rig == _again().rigs[0]
        assert "Once more" in title_shown(run)
        _answer(run, Part.LEADER, LEADER)
        assert run.progress.answers[-1].place == ("other", 0)
        run.next()
        assert run.rig is None

    def test_marks_keep_their_choices(self, tmp_path: Path) -> None:
        run = _run(tmp_path)
        run.say(run.sitting.said.marked(Part.LEADER))
        before = marks_shown(run)
        run.say(run.sitting.said.because(Part.LEADER, LEADER))
        after = marks_shown(run)
        assert after[0].choices == before[0].choices
        assert (before[0].picked, after[0].picked) == ((), (LEADER,))

    def test_a_full_disk_is_said_and_the_lesson_goes_on(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        run = _run(tmp_path)
        (tmp_path / "blocked").write_text("a file, not a folder", encoding="utf-8")
        monkeypatch.setattr(run._store, "folder", tmp_path / "blocked")
        said: list[str] = []
        run.said.connect(said.append)
        _answer(run, Part.LEADER, LEADER)
        assert outcome_shown(run) is not None
        assert said
        assert "could not be kept" in said[0]


@pytest.mark.usefixtures("qapp")
class TestResume:
    """Left, or killed, and gone on with."""

    def test_it_goes_on_exactly_where_it_was_left(self, tmp_path: Path) -> None:
        run = _run(tmp_path)
        _answer(run, Part.LEADER, LEADER)
        run.next()
        run.take_hint()
        run.say(run.sitting.said.marked(Part.REEL).because(Part.REEL, "spool-half-empty"))
        run.bench.edit("main.test", "65 lb")
        run.keep_typing()
        left = run.sitting
        again = _run(tmp_path)
        assert again.resumed
        assert again.sitting == left
        assert again.bench.text("main.test") == "65 lb"
        assert again.progress == run.progress

    def test_shown_reasons_are_still_shown_and_not_counted_twice(self, tmp_path: Path) -> None:
        run = _run(tmp_path)
        _answer(run, Part.LEADER, LEADER)
        again = _run(tmp_path)
        before, after = outcome_shown(run), outcome_shown(again)
        assert before is not None
        assert after is not None
        assert after.opening == before.opening
        assert [(each.state, each.reason.headline) for each in after.reasons] == [
            (each.state, each.reason.headline) for each in before.reasons
        ]
        assert len(again.progress.answers) == 1

    def test_another_junior_begins_at_the_beginning(self, tmp_path: Path) -> None:
        _answer(_run(tmp_path))
        other = _run(tmp_path, name="Tom")
        assert not other.resumed
        assert other.progress.answers == ()

    def test_a_kill_half_way_loses_nothing(
        self,
        tmp_path: Path,
        start_python: Callable[..., object],  # noqa: F811
    ) -> None:
        process = start_python(_HALF_WAY, tmp_path, shipped()[3])
        line = process.stdout.readline()  # type: ignore[attr-defined]
        process.send_signal(signal.SIGKILL)  # type: ignore[attr-defined]
        process.communicate(timeout=30)  # type: ignore[attr-defined]
        assert line.strip() == "half way"
        store = ProgressStore(tmp_path)
        run = LessonRun(lesson(shipped()[3]), shipped()[3], store.load("Mia"), store, make_bench({}))
        assert run.resumed
        assert title_shown(run) == "Rig 2 of 7"
        assert [mark.part for mark in run.sitting.said.marks] == [Part.LEADER]
        assert run.bench.text("leader.test") == "12 lb"
        assert len(run.progress.answers) == 1


_HALF_WAY = """
import os, sys, time
os.environ["QT_QPA_PLATFORM"] = "offscreen"
from pathlib import Path
from PySide6.QtCore import QCoreApplication, QEventLoop, QTimer
from rigbuilder.lessons.progress import Progress
from rigbuilder.model.fields import Part
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.store.lessons import load_lesson
from rigbuilder.store.progress import ProgressStore
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.lesson import LessonRun
application = QCoreApplication([])
store, path = ProgressStore(Path(sys.argv[1])), Path(sys.argv[2])
bench = Bench({}, load(), House.shipped())
run = LessonRun(load_lesson(path, load()).lesson, path, store.load("Mia"), store, bench)
run.say(run.sitting.said.nothing())
run.show_reasons()
run.next()
run.say(run.sitting.said.marked(Part.LEADER))
bench.edit("leader.test", "12 lb")
QTimer.singleShot(600, lambda: print("half way", flush=True))
QTimer.singleShot(60000, application.quit)
application.exec()
"""


def test_the_hall_saves_lessons_and_lists_juniors(tmp_path: Path, qapp: QCoreApplication) -> None:
    hall = LessonHall(make_bench({}), tmp_path / "lessons", ProgressStore(tmp_path / "progress"))
    said: list[str] = []
    hall.said.connect(said.append)
    first, second = hall.save(_lesson(), None), hall.save(_lesson(), None)
    assert first is not None
    assert second is not None
    assert first != second
    assert [row.path for row in hall.lessons() if not row.shipped] == sorted([first, second])
    assert hall.save(_lesson().with_(name="Other"), first) == first
    run = hall.start(_lesson(), first, "Mia", hall)
    assert run is not None
    _answer(run, Part.LEADER, LEADER)
    assert [junior.name for junior in hall.juniors()] == ["Mia"]
    assert [row.understood for row in hall.standings("Mia")] == [True]
    assert hall.export_progress("Mia", tmp_path / "mia.rigprogress")
    assert hall.delete_progress("Mia")
    assert hall.juniors() == []
    assert hall.load(tmp_path / "none.riglesson") is None
    assert len(said) == 1
