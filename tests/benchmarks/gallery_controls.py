"""Writes pictures of all controls, signs, icons and sample charts, in light, dark and print.

Use: ``python -m tests.benchmarks.gallery_controls FOLDER`` (offscreen unless told otherwise).
"""

import os
import sys
from math import exp
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtWidgets import (
    QApplication,
    QCheckBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QRadioButton,
    QTabBar,
    QVBoxLayout,
    QWidget,
)

from rigbuilder.views.controls.badge import SeverityBadge
from rigbuilder.views.controls.buttons import ActionButton, LinkButton
from rigbuilder.views.controls.card import Card
from rigbuilder.views.controls.chips import Chip, ChipKind, Chips
from rigbuilder.views.controls.choice_field import ChoiceField
from rigbuilder.views.controls.flow_layout import FlowLayout
from rigbuilder.views.controls.foldable import Foldable
from rigbuilder.views.controls.quantity_field import QuantityField
from rigbuilder.views.controls.segment_row import SegmentRow
from rigbuilder.views.controls.texts import text_label
from rigbuilder.views.controls.toast import Toast
from rigbuilder.views.icons import icon, icon_names
from rigbuilder.views.paint.export import A5, figure_painter, to_image, to_pdf, to_svg
from rigbuilder.views.paint.signs import paint_sign
from rigbuilder.views.paint.spec import Axis, Bar, BarSpec, ChartSpec, Limit, Mark, Scale, Series
from rigbuilder.views.paint.view import ChartView
from rigbuilder.views.theme import GRADES, SEVERITIES, Theme
from rigbuilder.views.theme_look import Look, Mode
from rigbuilder.views.theme_palettes import DARK, LIGHT, PRINT

XS = [4 + 2 * k for k in range(24)]


def curve(start: float, end: float, rate: float = 0.06) -> tuple[tuple[float, float], ...]:
    """Return an invented falling curve, only to have something to look at."""
    return tuple((x, end + (start - end) * exp(-rate * (x - 4))) for x in XS)


def series(label: str, role: str, start: float, end: float, wide: float, strong: bool = False) -> Series:
    """Return an invented curve with a band."""
    points = curve(start, end)
    band = tuple((x, y * (1 - wide), y * (1 + wide)) for x, y in points)
    return Series(label, points, role, band, strong)


HOOK = ChartSpec(
    title="Will the hook go home?",
    answer="At 18 m the hook gets about two thirds of what the usual rig gives it.",
    x=Axis("distance to the fish", "m"),
    y=Axis("force at the hook", "N"),
    series=(
        series("fluorocarbon 16 lb, as rigged", "fluorocarbon", 46, 17, 0.14, strong=True),
        series("braid 50 lb", "braid", 58, 40, 0.08),
        series("nylon 17 lb", "nylon", 42, 14, 0.14),
        series("copolymer 16 lb", "copolymer", 43, 15.5, 0.1),
    ),
    limits=(Limit(31, "what the usual rig gives at 18 m"), Limit(18, "this cast", axis="x")),
    marks=(Mark(18, 29.5, "24 % less than usual", "risk"),),
    note="Bands: low to high over knot, temperature and how hard the rod is swung. Computed.",
)
LOGS = ChartSpec(
    title="What does a fish see of it?",
    x=Axis("line diameter", "mm", Scale.LOG),
    y=Axis("distance at which it is seen", "m", Scale.LOG),
    series=(
        Series("nylon", tuple((0.1 * 1.2**k, 0.2 * 1.2**k) for k in range(12)), "nylon", markers=True),
        Series(
            "braid",
            tuple((0.1 * 1.2**k, 0.6 * 1.18**k) for k in range(12)),
            "braid",
            markers=True,
            strong=True,
        ),
    ),
)
BREAKS = BarSpec(
    title="Where will it break?",
    answer="First at the knot to the frog: it is the weakest in 7 of 10 trials.",
    axis=Axis("share of trials in which it breaks first", "%"),
    bars=(
        Bar("backing knot", 0, 1, 3, "other b"),
        Bar("main line", 2, 6, 11, "other b"),
        Bar("joint knot", 9, 21, 38, "other b"),
        Bar("leader", 1, 3, 7, "other b"),
        Bar("knot at the frog", 52, 69, 84, "candidate", strong=True),
    ),
    limits=(Limit(50, "even odds"),),
)


def form(look: Look) -> QWidget:
    """Return a column of controls."""
    box = QWidget()
    column = QVBoxLayout(box)
    column.setSpacing(look.theme.px(8))
    lure = Foldable(look, "Lure")
    grid = QGridLayout()
    technique = ChoiceField("Technique", searchable=True)
    technique.set_options([("a", "hollow-body frog"), ("b", "drop shot"), ("c", "lipless crankbait")])
    technique.set_value("a")
    weight = QuantityField("Weight", unit="oz")
    weight.set_text("5/8")
    cover = ChoiceField("Cover")
    cover.set_options([("m", "matted grass"), ("o", "open")])
    cover.set_value("m")
    test = QuantityField("Test", unit="lb")
    test.set_text("16")
    test.set_problem("16 lb lies below the rod's 30–65 lb. Use 30 lb or more.")
    for row, (name, field) in enumerate(
        [("Technique", technique), ("Weight", weight), ("Cover", cover), ("Test", test)]
    ):
        label = text_label(name, "label", buddy=field)
        grid.addWidget(label, row, 0, Qt.AlignmentFlag.AlignTop)
        label.setMinimumHeight(look.theme.px(28))
        grid.addWidget(field, row, 1)
    lure.column.addLayout(grid)
    lure.set_badge("fault", 2)
    column.addWidget(lure)
    types = SegmentRow("Type", [("n", "nylon"), ("f", "fluoro"), ("b", "braid")])
    types.set_value("f")
    column.addWidget(types)
    rod = Foldable(look, "Rod label")
    label_field = QuantityField("Rod label")
    label_field.set_text("7'3\" H F 30-65 lb 1/2-1 1/4 oz zz9")
    rod.column.addWidget(label_field)
    chips = Chips("Rod label as understood")
    chips.set_chips(
        [
            Chip("7 ft 3 in"),
            Chip("heavy"),
            Chip("30–65 lb"),
            Chip("fast", ChipKind.DOUBTFUL, "F may mean fast or float"),
            Chip("zz9", ChipKind.NOT_UNDERSTOOD),
        ]
    )
    rod.column.addWidget(chips)
    column.addWidget(rod)
    water = Foldable(look, "Water", open_at_first=False)
    water.set_badge("note", 1)
    column.addWidget(water)
    off = QuantityField("Depth", unit="m", placeholder="assumed 2 m")
    column.addWidget(off)
    dead = QuantityField("Wind", unit="m/s")
    dead.set_text("not used")
    dead.setEnabled(False)
    column.addWidget(dead)
    row = QHBoxLayout()
    ranges = QCheckBox("Show ranges")
    ranges.setChecked(True)
    row.addWidget(ranges)
    radio = QRadioButton("from shore")
    radio.setChecked(True)
    row.addWidget(radio)
    column.addLayout(row)
    tabs = QTabBar()
    for name in ("Where will it break?", "Will the hook go home?", "How deep?"):
        tabs.addTab(name)
    tabs.setCurrentIndex(1)
    column.addWidget(tabs)
    column.addStretch(1)
    return box


def reasons(look: Look) -> QWidget:
    """Return a column of cards."""
    box = QWidget()
    column = QVBoxLayout(box)
    column.setSpacing(look.theme.px(10))
    top = QHBoxLayout()
    top.addWidget(text_label("Reasons", "title"))
    top.addStretch(1)
    for kind, words in (("fault", "2 faults"), ("risk", "1 risk"), ("note", "3 notes")):
        top.addWidget(SeverityBadge(look, kind, words, filled=kind == "fault"))
    column.addLayout(top)
    texts = [
        (
            "fault",
            1,
            "Sinking line on a surface lure",
            "Fluorocarbon is 1.8 times as dense as water. "
            "The 9.6 m lying under the surface pull the nose down, and the frog stops walking.",
        ),
        (
            "risk",
            2,
            "The rod is stronger than the line",
            "A full swing of this rod can load the knot to 11–16 lb; wet it holds 10–13 lb.",
        ),
        (
            "note",
            3,
            "Old line",
            "Nobody said how old the line is; <img src=x> two seasons of sun cost it a tenth.",
        ),
        (
            "right",
            None,
            "What is right",
            "The lure lies inside the rod's 1/2–1 1/4 oz. The palomar suits this line.",
        ),
    ]
    for severity, number, headline, why in texts:
        card = Card(look, severity=severity, number=number)
        head = text_label(headline, "heading", wrap=True)
        card.column.addWidget(head)
        card.column.addWidget(text_label(why, wrap=True))
        if number in (1, 2):
            flow = FlowLayout(gap=look.theme.px(6))
            flow.addWidget(ActionButton("Use braid 50 lb", weight="remedy"))
            flow.addWidget(ActionButton("Show it in the water", weight="quiet"))
            card.column.addLayout(flow)
            card.column.addWidget(LinkButton("How we know: computed; common practice"))
        column.addWidget(card)
    row = QHBoxLayout()
    row.addWidget(ActionButton("Save card", weight="first"))
    row.addWidget(ActionButton("Discard"))
    gone = ActionButton("Print")
    gone.setEnabled(False)
    row.addWidget(gone)
    row.addStretch(1)
    column.addLayout(row)
    column.addStretch(1)
    return box


def icons_row(look: Look) -> QWidget:
    """Return all icons with their names."""
    box = QWidget()
    flow = FlowLayout(box, gap=look.theme.px(10))
    for name in icon_names():
        cell = QWidget()
        column = QVBoxLayout(cell)
        column.setContentsMargins(0, 0, 0, 0)
        picture = QLabel()
        picture.setPixmap(icon(name, look.theme).pixmap(QSize(28, 28)))
        column.addWidget(picture, 0, Qt.AlignmentFlag.AlignHCenter)
        column.addWidget(text_label(name, "small"))
        flow.addWidget(cell)
    return box


def signs_sheet(theme: Theme) -> QPixmap:
    """Return all signs at several sizes and the line chart's cells."""
    pixmap = QPixmap(QSize(760, 230) * 2)
    pixmap.setDevicePixelRatio(2)
    pixmap.fill(theme.colour("card"))
    painter = QPainter(pixmap)
    painter.setFont(theme.font("caption"))
    for column, name in enumerate((*SEVERITIES, *GRADES)):
        x = 16 + 92 * column
        for row, side in enumerate((12, 16, 24, 40)):
            paint_sign(painter, QRectF(x, (12, 32, 56, 90)[row], side, side), name, theme.colour(name))
        painter.setPen(theme.colour("ink"))
        painter.drawText(x, 152, name)
    for column, name in enumerate(
        ["never"] * 8 + ["poor"] * 3 + ["works"] * 3 + ["first choice"] * 4 + ["works"]
    ):
        tone = theme.grade(name)
        cell = QRectF(16 + 34 * column, 170, 31, 28)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.colour("card"))
        painter.fillRect(cell, tone.wash)
        paint_sign(painter, cell.adjusted(9, 8, -9, -8), name, tone.on)
    painter.end()
    return pixmap


def window(look: Look) -> QWidget:
    """Return everything in one window."""
    page = QWidget()
    row = QHBoxLayout(page)
    left, right = form(look), reasons(look)
    left.setFixedWidth(look.theme.px(300))
    right.setFixedWidth(look.theme.px(400))
    row.addWidget(left)
    middle = QVBoxLayout()
    for spec in (HOOK, BREAKS):
        card = Card(look)
        view = ChartView(look, spec.title)
        view.set_spec(spec)
        card.column.addWidget(view)
        middle.addWidget(card, 1)
    middle.addWidget(icons_row(look))
    row.addLayout(middle, 1)
    row.addWidget(right)
    page.resize(look.theme.px(1440), look.theme.px(900))
    toast = Toast(page)
    page.show()
    toast.show_message("Put on braid 50 lb.", undo=lambda: None)
    return page


def main(folder: Path) -> None:
    """Write the gallery."""
    folder.mkdir(parents=True, exist_ok=True)
    app = QApplication.instance() or QApplication([])
    assert isinstance(app, QApplication)
    for mode in (Mode.LIGHT, Mode.DARK):
        look = Look(app, mode=mode)
        page = window(look)
        app.processEvents()
        page.grab().save(str(folder / f"window-{mode}.png"))
        page.deleteLater()
    for theme in (LIGHT, DARK, PRINT):
        for name, spec in (("hook", HOOK), ("log", LOGS), ("breaks", BREAKS)):
            image = to_image(figure_painter(spec, theme), QSize(680, 360))
            image.save(str(folder / f"chart-{name}-{theme.name}.png"))
        signs_sheet(theme).save(str(folder / f"signs-{theme.name}.png"))
    (folder / "hook.svg").write_bytes(to_svg(figure_painter(HOOK, PRINT), QSize(680, 360)))
    (folder / "hook.pdf").write_bytes(to_pdf([figure_painter(HOOK, PRINT)], A5, landscape=True))


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "gallery"))
