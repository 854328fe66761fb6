"""The window of lessons and what is opened from it: take, print, edit, show, keep, delete."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from rigbuilder import resources
from rigbuilder.app import show_lessons
from rigbuilder.lessons.progress import Answered, Progress
from rigbuilder.store.lessons import load_lesson
from rigbuilder.store.progress import ProgressStore
from rigbuilder.viewmodels.lesson_hall import LessonHall
from rigbuilder.viewmodels.lesson_paper import lesson_paper
from rigbuilder.views.lesson_class import ClassPanel
from rigbuilder.views.lesson_handout import handout_pdf
from rigbuilder.views.lesson_menu import LessonsMenu
from rigbuilder.views.paint.export import A5, LETTER
from rigbuilder.views.theme_look import Look
from tests.unit.lessons.cases import lesson, reference, shipped
from tests.unit.viewmodels.parts import make_bench
from tests.unit.views.parts import Window


class Place:
    """The menu of lessons over a main window in fresh folders."""

    def __init__(self, folder: Path, look: Look) -> None:
        self.main = Window(folder, look)
        self.folder = folder
        hall = LessonHall(self.main.bench, folder / "lessons", ProgressStore(folder / "progress"))
        self.menu = LessonsMenu(self.main.main, hall)
        self.menu.open_lessons()

    @property
    def answers(self) -> list[str | Path | None]:
        """The answers prepared."""
        return self.main.ask.answers


@pytest.fixture
def place(tmp_path: Path, look: Look, qtbot: object) -> Iterator[Place]:
    made = Place(tmp_path, look)
    yield made
    for window in (made.menu.lesson, made.menu.editor, made.menu.show_window, made.menu.what_if):
        if window is not None:
            window.close()
    made.menu.window.close()
    made.main.close()


def test_the_menu_stands_before_help(place: Place) -> None:
    titles = [action.text() for action in place.main.main.menuBar().actions()]
    assert titles[-2:] == ["&Lessons", "&Help"]


def test_no_key_means_two_things_in_the_window(place: Place) -> None:
    actions = place.main.main.findChildren(QAction)
    keys = [key.toString() for action in actions for key in action.shortcuts() if not key.isEmpty()]
    assert {key for key in keys if keys.count(key) > 1} == set()
    assert "Ctrl+Shift+T" in keys


def test_a_name_is_all_that_is_needed_to_take_a_lesson(place: Place) -> None:
    window = place.menu.window
    assert window.list.count() == len(shipped())
    assert not window.begin.isEnabled()
    window.list.setCurrentRow(1)
    QTest.keyClicks(window.name.lineEdit(), "Mia")
    assert window.begin.isEnabled()
    QTest.mouseClick(window.begin, Qt.MouseButton.LeftButton)
    assert place.menu.lesson is not None
    assert place.menu.lesson.run.progress.name == "Mia"
    run = place.menu.lesson.run
    run.say(run.sitting.said.nothing())
    run.show_reasons()
    run.next()
    run.say(run.sitting.said.nothing())
    run.show_reasons()
    window.fill_names()
    assert "Not yet, and coming back:" in window.standing.text()
    assert "Right rigs called right: 1 of 1." in window.standing.text()
    assert window.begin.text() == "Go on with this lesson"
    place.menu.take()
    assert place.menu.lesson.run.resumed


def test_progress_is_exported_and_deleted_when_that_is_confirmed(place: Place) -> None:
    window = place.menu.window
    window.name.setEditText("Mia")
    place.menu.take()
    window.fill_names()
    target = place.folder / "mia.rigprogress"
    place.answers[:] = [target, "cancel", "delete"]
    window.export.click()
    assert target.exists()
    window.delete.click()
    assert [junior.name for junior in place.menu.hall.juniors()] == ["Mia"]
    window.delete.click()
    assert place.menu.hall.juniors() == []


@pytest.mark.parametrize("kind", ["juniors", "juniors-large", "answers", "answers-large"])
def test_hand_outs_are_written(place: Place, kind: str) -> None:
    place.menu.window.list.setCurrentRow(3)
    path = place.folder / "out.pdf"
    place.answers[:] = [kind, path]
    place.menu.window.verbs["paper"].click()
    assert path.read_bytes().startswith(b"%PDF")


def test_a_hand_out_that_cannot_be_written_says_so(place: Place) -> None:
    place.answers[:] = ["juniors", place.folder]
    place.menu.hand_out()
    assert "could not be written" in place.menu.window.toast.message.text()


def test_answers_and_large_type_take_more_room_and_equal_lessons_give_equal_bytes(qtbot: object) -> None:
    bench = make_bench({})
    found = lesson(shipped()[3])
    sheet, answers = lesson_paper(found, bench, answers=False), lesson_paper(found, bench, answers=True)
    pages = {
        name: handout_pdf(paper, large=large).count(b"/Type /Page\n")
        for name, paper, large in (
            ("sheet", sheet, False),
            ("answers", answers, False),
            ("large", answers, True),
        )
    }
    assert pages["sheet"] == len(found.rigs)
    assert pages["answers"] >= pages["sheet"]
    assert pages["large"] > pages["answers"]
    assert handout_pdf(sheet, size=LETTER) == handout_pdf(sheet, size=LETTER)
    assert handout_pdf(sheet, size=A5) != handout_pdf(sheet, size=LETTER)


def test_a_lesson_is_made_in_the_editor_and_saved(place: Place) -> None:
    place.menu.window.verbs["new"].click()
    editor = place.menu.editor
    assert editor is not None
    editor.save_button.click()
    assert "needs a name" in editor.said.text()
    QTest.keyClicks(editor.name, "Tuesday evening")
    editor.add.click()
    editor.spoiling.technique.set_value("carolina")
    editor.spoiling.mistake.set_value("leader-stronger-than-main")
    editor.spoiling.button.click()
    assert "Meant and found: leader-stronger-than-main." in editor.said.text()
    QTest.keyClicks(editor.hint, "Read the leader.")
    editor.up.click()
    editor.save_button.click()
    saved = load_lesson(place.folder / "lessons" / "tuesday-evening.riglesson", reference()).lesson
    assert saved.rigs[0].meant == ("leader-stronger-than-main",)
    assert saved.rigs[0].hint == "Read the leader."
    assert place.menu.window.list.count() == len(shipped()) + 1


def test_cards_come_from_files_and_nothing_is_left_unsaved_without_a_question(place: Place) -> None:
    place.menu.edit(None)
    editor = place.menu.editor
    assert editor is not None
    broken = place.folder / "broken.rigcard"
    broken.write_text("{", encoding="utf-8")
    place.answers[:] = [broken, resources.path("demo", "pad-frog.rigcard"), "stay", "leave"]
    editor.add_file.click()
    assert "broken.rigcard" in editor.said.text()
    assert editor.draft.rigs == ()
    editor.add_file.click()
    assert len(editor.draft.rigs) == 1
    assert editor.draft.rigs[0].meant
    editor.cancel.click()
    assert editor.isVisible()
    editor.cancel.click()
    assert not editor.isVisible()
    place.menu.edit(None)
    assert place.menu.editor is not editor
    assert place.menu.editor is not None
    place.menu.editor.cancel.click()
    assert not place.menu.editor.isVisible()


def test_a_shipped_lesson_is_changed_as_a_copy(place: Place) -> None:
    before = [path.read_bytes() for path in shipped()]
    place.menu.window.verbs["edit"].click()
    editor = place.menu.editor
    assert editor is not None
    editor.out.click()
    editor.save_button.click()
    assert [path.read_bytes() for path in shipped()] == before
    own = [row.lesson for row in place.menu.hall.lessons() if not row.shipped]
    assert own[0] is not None
    assert len(own[0].rigs) == len(lesson(shipped()[0]).rigs) - 1


def test_the_room_is_led_by_one_key(place: Place) -> None:
    place.menu.window.list.setCurrentRow(3)
    place.menu.window.verbs["show"].click()
    show = place.menu.show_window
    assert show is not None
    assert show.slide is not None
    assert show.slide.title == "Leaders and joints"
    place.menu.window.hide()  # off the screen it would stay the active window
    for _ in range(6):
        QTest.keyClick(show, Qt.Key.Key_Space)
    assert show.slide is not None
    assert show.slide.title == "2. Jonas, the wrong way round"
    assert show.slide.scene is not None
    assert show.slide.scene.pins == ()
    for _ in range(4):
        QTest.keyClick(show, Qt.Key.Key_Space)
    assert show.slide is not None
    assert show.slide.severity == "fault"
    QTest.keyClick(show, Qt.Key.Key_Escape)
    assert not show.isVisible()


def test_a_lesson_from_elsewhere_is_opened_or_its_mistakes_are_told(place: Place) -> None:
    broken = place.folder / "x.riglesson"
    broken.write_text("{", encoding="utf-8")
    place.answers[:] = [broken]
    place.menu.open_asked()
    assert "x.riglesson" in place.menu.window.toast.message.text()
    place.answers[:] = [shipped()[2]]
    place.menu.open_asked()
    assert place.menu.window.list.currentRow() == 2
    assert place.menu.window.list.count() == len(shipped())


def test_a_lesson_that_is_dropped_or_named_at_the_start_waits_for_a_name(place: Place) -> None:
    place.menu.window.close()
    sent = place.folder / "sent" / "class.riglesson"
    sent.parent.mkdir()
    sent.write_bytes(shipped()[2].read_bytes())
    for _ in range(2):
        show_lessons(place.main.main, [place.folder / "a.rigcard", sent])
        assert place.menu.window.isVisible()
        assert place.menu.window.list.count() == len(shipped()) + 1
        assert place.menu.window.chosen is not None
        assert place.menu.window.chosen.path == sent
    QTest.keyClicks(place.menu.window.name.lineEdit(), "Tom")
    QTest.keyClick(place.menu.window.name.lineEdit(), Qt.Key.Key_Return)
    assert place.menu.lesson is not None
    assert place.menu.lesson.run.lesson == lesson(shipped()[2])
    assert place.menu.lesson.run.sitting.path == str(sent)


def test_a_lesson_that_cannot_be_read_is_told_of_in_the_window_of_lessons(place: Place) -> None:
    show_lessons(place.main.main, [place.folder / "gone.riglesson"])
    assert "gone.riglesson" in place.menu.window.toast.message.text()


def test_what_if_opens_over_the_bench_and_lets_go_of_it_when_closed(place: Place) -> None:
    place.menu.open_what_if()
    window = place.menu.what_if
    assert window is not None
    window.panel.ask("Will the hook go home?")
    QTest.keyClick(window.panel.scale, Qt.Key.Key_End)
    assert place.main.bench.preview is not None
    window.close()
    QApplication.processEvents()
    assert place.main.bench.preview is None


def test_the_coach_sees_the_whole_class_and_keeps_it_as_a_table(place: Place) -> None:
    window = place.menu.window
    assert not window.class_.isEnabled()
    place.menu.hall.store.save(
        Progress(name="Mia", answers=(Answered(lesson="x", rig=0, not_yet=("line-worn",)),))
    )
    place.menu.hall.store.save(Progress(name="Tom"))
    (place.menu.hall.store.folder / "torn.rigprogress").write_text("{", encoding="utf-8")
    window.fill()
    window.class_.click()
    assert place.menu.class_ is not None
    panel = place.menu.class_.findChildren(ClassPanel)[0]
    head = [panel.table.horizontalHeaderItem(column).text() for column in range(3)]
    assert head == ["Rule", "Mia", "Tom"]
    assert panel.table.item(0, 1).text() == "· not yet"
    taught = {rule for path in shipped() for rig in lesson(path).rigs for rule in rig.meant}
    assert panel.table.rowCount() == len(taught | {"line-worn"}) + 1
    place.answers[:] = [place.folder, place.folder / "class.csv"]
    panel.export.click()
    assert "could not be written" in panel.toast.message.text()
    panel.export.click()
    assert (place.folder / "class.csv").read_bytes().startswith("\ufeff".encode())
    assert "torn.rigprogress" in window.toast.message.text()
    place.menu.class_.close()
