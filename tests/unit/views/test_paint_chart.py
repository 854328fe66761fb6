"""The chart kit: places, words, tables, exports."""

import csv
import re
from io import StringIO
from itertools import combinations
from math import exp
from time import perf_counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QGuiApplication, QImage, QPainter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from rigbuilder.views.paint.bars import bar_text, paint_bars
from rigbuilder.views.paint.chart import paint_chart
from rigbuilder.views.paint.clutter import Clutter
from rigbuilder.views.paint.export import A4, A5, figure_painter, to_image, to_pdf, to_png, to_svg
from rigbuilder.views.paint.labels import spread
from rigbuilder.views.paint.layout import chart_plot, end_labels
from rigbuilder.views.paint.pencil import Pencil
from rigbuilder.views.paint.plot import Ruler, curve_path, thinned
from rigbuilder.views.paint.signs import paint_pin
from rigbuilder.views.paint.spec import Axis, Bar, BarSpec, ChartSpec, Limit, Mark, Scale, Series
from rigbuilder.views.paint.table import as_csv, as_table, as_text, describe
from rigbuilder.views.paint.view import ChartView
from rigbuilder.views.theme import Theme, luminance
from rigbuilder.views.theme_look import Look, Mode
from rigbuilder.views.theme_palettes import DARK, LIGHT, PRINT

XS = tuple(4.0 + 2 * k for k in range(24))


def falling(label: str, role: str, start: float, end: float, *, strong: bool = False) -> Series:
    points = tuple((x, end + (start - end) * exp(-0.06 * (x - 4))) for x in XS)
    return Series(label, points, role, tuple((x, 0.9 * y, 1.1 * y) for x, y in points), strong)


CHART = ChartSpec(
    title="Will the hook go home?",
    x=Axis("distance", "m"),
    y=Axis("force", "N"),
    series=(
        falling("fluorocarbon 16 lb", "fluorocarbon", 46, 17, strong=True),
        falling("nylon 17 lb", "nylon", 42, 16.5),
        falling("copolymer 16 lb", "copolymer", 43, 16.8),
        falling("braid 50 lb", "braid", 58, 40),
    ),
    limits=(Limit(31, "usual"), Limit(18, "this cast", "x", "note")),
    marks=(Mark(18, 29.5, "less than usual", "risk"),),
    answer="At 18 m it gets two thirds.",
    note="Computed.",
)
BARS = BarSpec(
    title="Where will it break?",
    axis=Axis("share", "%"),
    bars=(Bar("main line", 2, 6, 11), Bar("knot at the frog", 52, 69, 84, "candidate", strong=True)),
    limits=(Limit(50, "even odds"),),
)


def canvas(width: int = 640, height: int = 360) -> QImage:
    image = QImage(width, height, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(0)
    return image


@pytest.mark.parametrize("scale", [Scale.LINEAR, Scale.LOG])
@given(value=st.floats(0.11, 99))
@settings(max_examples=50)
def test_ruler_and_back(scale: Scale, value: float) -> None:
    ruler = Ruler(Axis("x", scale=scale), 0.1, 100, 40, 600)
    assert ruler.value(ruler.at(value)) == pytest.approx(value, rel=1e-9)
    assert ruler.at(0.1) == pytest.approx(40)
    assert ruler.at(100) == pytest.approx(600)


def test_curve_passes_through_every_computed_point(qapp: QApplication) -> None:
    image = canvas()
    painter = QPainter(image)
    plot = paint_chart(painter, QRectF(image.rect()), CHART, LIGHT)
    painter.end()
    for series in CHART.series:
        path = curve_path(thinned(series.points, round(plot.area.width())), plot)
        corners = [(path.elementAt(k).x, path.elementAt(k).y) for k in range(path.elementCount())]  # type: ignore[attr-defined]
        wanted = [(plot.x.at(x), plot.y.at(y)) for x, y in series.points]
        for corner, want in zip(corners, wanted, strict=True):
            assert corner == pytest.approx(want)
    # and the ink is there: the strong, solid line of braid in its own colour
    braid = CHART.series[3]
    ink = LIGHT.stroke("braid").colour.lower()
    spots = [plot.point(x, y).toPoint() for x, y in braid.points[2:-2:4]]
    for spot in spots:
        near = {image.pixelColor(spot + QPoint(0, dy)).name() for dy in (-1, 0, 1)}
        assert any(_close(name, ink) for name in near), (spot, near)


def _close(one: str, other: str) -> bool:
    pairs = zip(bytes.fromhex(one[1:]), bytes.fromhex(other[1:]), strict=True)
    return max(abs(a - b) for a, b in pairs) < 70


@given(
    wanted=st.lists(st.floats(0, 300), min_size=1, max_size=8),
    height=st.floats(5, 30),
)
@settings(max_examples=100)
def test_labels_never_overlap_and_stay_inside(wanted: list[float], height: float) -> None:
    heights = [height] * len(wanted)
    centres = spread(wanted, heights, 0, 300)
    for a, b in combinations(centres, 2):
        assert abs(a - b) >= height - 1e-6
    assert min(centres) >= height / 2 - 1e-6
    assert max(centres) <= 300 - height / 2 + 1e-6
    order = sorted(range(len(wanted)), key=lambda k: wanted[k])
    assert [centres[k] for k in order] == sorted(centres)


def test_labels_with_room_stay_where_they_wish() -> None:
    assert spread([50, 150, 250], [20, 20, 20], 0, 300) == [50, 150, 250]


@pytest.mark.parametrize("width", [320, 640, 1000])
@pytest.mark.parametrize("theme", [LIGHT, LIGHT.zoomed(2.0)], ids=["100 %", "200 %"])
def test_end_labels_of_a_chart_are_apart_and_on_the_sheet(
    qapp: QApplication, width: int, theme: Theme
) -> None:
    image = canvas(width, 400)
    painter = QPainter(image)
    pencil = Pencil(painter, theme)
    room = QRectF(image.rect())
    plot = chart_plot(pencil, room, CHART)
    labels = end_labels(pencil, plot, room, CHART)
    painter.end()
    assert len(labels) == len(CHART.series)
    for one, other in combinations(labels, 2):
        assert not one.rect.adjusted(0, 0.1, 0, -0.1).intersects(other.rect)
    assert all(label.rect.left() > plot.area.right() for label in labels)
    assert plot.area.width() > 0


def test_words_find_a_clear_place() -> None:
    clutter = Clutter(QRectF(0, 0, 100, 100))
    clutter.take(QRectF(0, 0, 50, 20))
    free = QRectF(50, 40, 40, 10)
    assert clutter.place([QRectF(10, 5, 40, 10), QRectF(90, 5, 40, 10), free]) == free
    assert free in clutter.taken


def test_thinning_keeps_peaks_and_short_curves() -> None:
    points = tuple((float(k), 100.0 if k == 5003 else 0.0) for k in range(10_000))
    kept = thinned(points, 400)
    assert len(kept) <= 900
    assert (5003.0, 100.0) in kept
    assert thinned(CHART.series[0].points, 400) is CHART.series[0].points


def test_table_has_every_figure() -> None:
    rows = list(csv.reader(StringIO(as_csv(CHART))))
    assert rows[0] == ["line", "distance [m]", "low", "force [N]", "high"]
    values = [(row[0], float(row[1]), float(row[3])) for row in rows[1:] if not row[0].startswith("limit")]
    wanted = [(series.label, x, y) for series in CHART.series for x, y in series.points]
    assert len(values) == len(wanted)
    for got, want in zip(values, wanted, strict=True):
        assert got[0] == want[0]
        assert got[1:] == pytest.approx(want[1:], rel=1e-5)
    assert ["limit: usual", "", "", "31", ""] in rows
    assert as_table(BARS)[2] == ("knot at the frog", "52", "69", "84", "")
    assert "knot at the frog" in as_text(BARS)


def test_no_cell_starts_a_formula() -> None:
    spec = BarSpec("t", Axis("x"), (Bar("=cmd()", 0, -1, 0), Bar("@sum", 0, 1, 2)))
    text = as_csv(spec)
    assert "'=cmd()" in text
    assert "'@sum" in text
    assert "'-1" not in text


def test_description_has_the_key_numbers() -> None:
    said = describe(CHART)
    for part in ("Will the hook go home?", "two thirds", "force [N]", "58 N at 4 m", "usual, 31"):
        assert part in said
    assert "knot at the frog: 69 %, 52 to 84." in describe(BARS)
    assert bar_text(Bar("a", 2, 2, 2), Axis("x", "N")) == "2 N"


@pytest.mark.parametrize("spec", [CHART, BARS], ids=["chart", "bars"])
def test_svg_keeps_words_as_words(qapp: QApplication, spec: ChartSpec | BarSpec) -> None:
    svg = to_svg(figure_painter(spec, PRINT), QSize(640, 360), title=spec.title).decode()
    words = " ".join(re.findall(r">([^<>]+)</text>", svg))
    assert spec.title in words
    names = [item.label for item in (spec.series if isinstance(spec, ChartSpec) else spec.bars)]
    for name in names:
        assert name in words
    assert svg.count("<path") + svg.count("<polyline") > 5


def test_pdf_is_vector_text_and_the_same_each_time(qapp: QApplication) -> None:
    pages = [figure_painter(CHART, PRINT), figure_painter(BARS, PRINT)]
    one, other = (to_pdf(pages, A5, title="Frog", landscape=True) for _ in range(2))
    assert one == other
    assert one.startswith(b"%PDF")
    assert one.count(b"/Type /Page\n") == 2
    assert b"/FontFile2" in one
    assert b"/Subtype /Image" not in one
    assert to_pdf(pages[:1], A4) != to_pdf(pages[1:], A4)


def mean_luminance(image: QImage) -> float:
    small = image.scaled(
        160, 90, Qt.AspectRatioMode.IgnoreAspectRatio, Qt.TransformationMode.SmoothTransformation
    )
    values = [luminance(small.pixelColor(x, y).name()) for x in range(160) for y in range(90)]
    return sum(values) / len(values)


@pytest.mark.parametrize("spec", [CHART, BARS], ids=["chart", "bars"])
def test_print_spares_ink_and_dark_is_dark(qapp: QApplication, spec: ChartSpec | BarSpec) -> None:
    assert mean_luminance(to_image(figure_painter(spec, PRINT), QSize(640, 360))) > 0.9
    assert mean_luminance(to_image(figure_painter(spec, DARK), QSize(640, 360))) < 0.15


def test_png_is_written_at_twice_the_size(qapp: QApplication) -> None:
    image = QImage.fromData(to_png(figure_painter(CHART, LIGHT), QSize(300, 200)))
    assert (image.width(), image.height()) == (600, 400)


@pytest.mark.parametrize(
    "spec",
    [
        ChartSpec("empty", Axis("x"), Axis("y"), ()),
        ChartSpec("one point", Axis("x"), Axis("y"), (Series("a", ((1.0, 2.0),)),)),
        ChartSpec("flat", Axis("x"), Axis("y"), (Series("a", ((0.0, 0.0), (1.0, 0.0))),)),
        ChartSpec(
            "log",
            Axis("x", scale=Scale.LOG),
            Axis("y", scale=Scale.LOG),
            (Series("a", ((0.0, 0.0), (1.0, 5.0))),),
        ),
        BarSpec("no bars", Axis("x"), ()),
    ],
    ids=lambda spec: spec.title,
)
@pytest.mark.parametrize("size", [QSize(20, 20), QSize(640, 360)], ids=["tiny", "usual"])
def test_odd_figures_are_painted_too(qapp: QApplication, spec: ChartSpec | BarSpec, size: QSize) -> None:
    image = to_image(figure_painter(spec, LIGHT), size)
    assert not image.isNull()


@pytest.mark.parametrize("severity", ["fault", "risk", "note", "right"])
def test_pins_have_number_and_outline(qapp: QApplication, severity: str) -> None:
    image = canvas(40, 40)
    painter = QPainter(image)
    box = paint_pin(painter, QPointF(20, 20), 7, severity, LIGHT)
    painter.end()
    assert QRectF(0, 0, 40, 40).contains(box)
    colours = {image.pixelColor(x, y).name() for x in range(40) for y in range(40)}
    assert LIGHT.severity(severity).ink.lower() in colours


@pytest.fixture
def view(qtbot: QtBot, look: Look) -> ChartView:
    made = ChartView(look, CHART.title)
    qtbot.addWidget(made)
    made.resize(600, 320)
    made.set_spec(CHART)
    made.show()
    made.activateWindow()
    made.setFocus()
    qtbot.waitUntil(made.hasFocus)
    made.grab()
    return made


def test_view_is_read_by_keyboard(view: ChartView) -> None:
    QTest.keyClick(view, Qt.Key.Key_End)
    assert view.reading().startswith("50 m: fluorocarbon 16 lb 18.8")
    QTest.keyClick(view, Qt.Key.Key_Left)
    assert view.reading().startswith("48 m:")
    QTest.keyClick(view, Qt.Key.Key_Home)
    assert "braid 50 lb 58 (52.2–63.8) N" in view.reading()
    view.grab()
    QTest.keyClick(view, Qt.Key.Key_Escape)
    assert view.reading() == ""
    assert "58 N at 4 m" in view.accessibleDescription()


def test_view_is_read_by_pointer(view: ChartView) -> None:
    QTest.mouseMove(view, QPoint(300, 150))
    assert "N" in view.reading()


def test_view_copies_its_table(view: ChartView) -> None:
    QTest.keyClick(view, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QGuiApplication.clipboard().text() == as_csv(CHART)


def test_view_paints_again_only_when_something_changed(view: ChartView, look: Look) -> None:
    before = view.grab().toImage()
    view.set_spec(BARS)
    bars = view.grab().toImage()
    assert before != bars
    look.set_mode(Mode.DARK)
    assert view.grab().toImage().pixelColor(300, 10).lightness() < 60


def test_time_of_one_update(qapp: QApplication, record_property: object) -> None:
    """For information: what one painting takes; nothing depends on the figure."""
    image = canvas()
    painter = QPainter(image)
    start = perf_counter()
    for _ in range(5):
        paint_chart(painter, QRectF(image.rect()), CHART, LIGHT)
        paint_bars(painter, QRectF(image.rect()), BARS, LIGHT)
    spent_ms = (perf_counter() - start) / 5 * 1000
    painter.end()
    assert callable(record_property)
    record_property("ms_for_chart_and_bars", round(spent_ms, 2))
    print(f"chart and bars: {spent_ms:.1f} ms")


def test_a_number_and_its_unit_stay_on_one_line(qapp: QApplication) -> None:
    found: list[list[str]] = []

    def paint(painter: QPainter, _: QRectF) -> None:
        pencil = Pencil(painter, LIGHT)
        found.extend(pencil.wrapped(text, "caption", 1.0) for text in ("a rig 1 1/2 oz", "cast 7 more"))

    to_image(paint, QSize(20, 20), scale=1.0)
    assert found == [["a", "rig", "1 1/2 oz"], ["cast", "7", "more"]]
