"""The comparison as it is read: marked in words, copied as a table, drawn in both themes."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from pytestqt.qtbot import QtBot

from rigbuilder.model.document import Document, put_all
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.review.speak import Speaker
from rigbuilder.viewmodels.compare import compare
from rigbuilder.views.compare import CompareView, overlaid
from rigbuilder.views.theme_look import Look, Mode
from tests.unit.viewmodels.parts import reference

FROG = usual_document("frog")
WRONG = put_all(FROG, {"name": "=Sum(rods)", "main.type": "fluorocarbon", "main.test": "16 lb"})


@pytest.fixture
def view(look: Look, qtbot: QtBot) -> CompareView:
    view = CompareView(look)
    qtbot.addWidget(view)
    view.resize(1100, 700)
    return view


def show(view: CompareView, *documents: Document) -> None:
    view.show_comparison(compare(documents, reference(), House.shipped(), Speaker()))
    view.show()


def texts(view: CompareView) -> list[list[str]]:
    table = view.table
    return [
        [item.text() if (item := table.item(row, column)) else "" for column in range(table.columnCount())]
        for row in range(table.rowCount())
    ]


def test_the_three_parts_stand_under_each_other(view: CompareView) -> None:
    show(view, FROG, WRONG)
    firsts = [row[0] for row in texts(view)]
    places = [firsts.index(title) for title in ("On the card", "Figures", "Reasons")]
    assert places == sorted(places)
    assert ["Main line type", "braid", "fluorocarbon"] in texts(view)
    chain = next(row for row in texts(view) if row[0] == "What the whole chain bears")
    assert chain[2].endswith(" %")
    assert "−" in chain[2]


def test_alike_cards_are_said_to_be_alike(view: CompareView) -> None:
    show(view, FROG, FROG | {"id": "other"})
    firsts = [row[0] for row in texts(view)]
    assert "The cards say the same." in firsts
    assert "No figure differs." in firsts
    assert "The review finds nothing on any of them." in firsts


def test_what_stands_out_is_strong_and_explained(view: CompareView) -> None:
    show(view, FROG, WRONG)
    row = next(place for place, cells in enumerate(texts(view)) if cells[0] == "What the whole chain bears")
    plain, marked = view.table.item(row, 1), view.table.item(row, 2)
    assert marked.font().weight() > plain.font().weight()
    assert "from the first card" in marked.toolTip()
    assert "What the whole chain bears: " in view.table.item(row, 0).data(Qt.ItemDataRole.AccessibleTextRole)


def test_a_copied_table_holds_no_formula(view: CompareView) -> None:
    show(view, FROG, WRONG)
    view.copy.click()
    head, *rows = QGuiApplication.clipboard().text().split("\n")
    assert head.split("\t") == ["", FROG["name"], "'=Sum(rods)"]
    assert "Main line type\tbraid\tfluorocarbon" in rows


def test_either_rig_can_stand_in_front(view: CompareView, qtbot: QtBot) -> None:
    show(view, FROG, WRONG, usual_document("flip-jig"))
    first = view.drawing.grab().toImage()
    qtbot.mouseClick(view.front.button("2"), Qt.MouseButton.LeftButton)
    assert view.drawing.accessibleDescription().startswith(usual_document("flip-jig")["name"])
    assert view.drawing.grab().toImage() != first


@pytest.mark.parametrize("mode", [Mode.LIGHT, Mode.DARK])
def test_it_paints_in_both_themes(view: CompareView, look: Look, mode: Mode) -> None:
    look.set_mode(mode)
    show(view, FROG, put_all(WRONG, {"main.test": "strong"}))
    picture = view.grab().toImage()
    assert len({picture.pixelColor(x, 60).name() for x in range(0, picture.width(), 5)}) > 2
    show(view, put_all(FROG, {"main.test": "?"}), put_all(WRONG, {"main.test": "strong"}))
    assert view.drawing.accessibleDescription() == "Nothing to draw yet"
    view.grab()


def test_close_says_so(view: CompareView, qtbot: QtBot) -> None:
    with qtbot.waitSignal(view.closed):
        view.close_button.click()


def test_rigs_in_like_water_lie_over_each_other_and_others_beside(view: CompareView) -> None:
    deep = put_all(FROG, {"water.depth": "9 m"})
    found = compare([FROG, deep, WRONG], reference(), House.shipped(), Speaker())
    first, second, third = (side.scene for side in found.sides)
    assert first is not None
    assert second is not None
    assert third is not None
    assert overlaid([first, second, third]) == [(first, third), (second, None)]
    assert overlaid([second, first, third]) == [(second, None), (first, None), (third, None)]
