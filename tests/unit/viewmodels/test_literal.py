import pytest
from PySide6.QtGui import QTextDocument

from rigbuilder.viewmodels.literal import literal


@pytest.mark.parametrize(
    "text", ["<b>Frog</b>", "a < b", "1 &lt; 2", "<img src='x.png'>\nsecond line", "</qt><h1>&amp;"]
)
def test_a_tip_shows_what_stands_on_the_card(text: str) -> None:
    shown = QTextDocument()
    shown.setHtml(literal(text))
    assert shown.toPlainText() == text


@pytest.mark.parametrize("text", ["", "Pad frog, rod 3", "6 & 8 lb\nnylon"])
def test_an_ordinary_text_stays_as_it_is(text: str) -> None:
    assert literal(text) == text
