"""Palette and style sheet that dress Qt's Fusion style in a theme."""

from string import Template

from PySide6.QtGui import QColor, QPalette

from rigbuilder import resources
from rigbuilder.views.theme import FontRole, Theme

_Role = QPalette.ColorRole
_Group = QPalette.ColorGroup


def palette(theme: Theme) -> QPalette:
    """Return the theme as a palette; switched-off text stays readable."""
    s = theme.surfaces
    roles = {
        _Role.Window: s.page,
        _Role.WindowText: s.ink,
        _Role.Base: s.field,
        _Role.AlternateBase: s.card,
        _Role.Text: s.ink,
        _Role.Button: s.card,
        _Role.ButtonText: s.ink,
        _Role.BrightText: s.on_accent,
        _Role.ToolTipBase: s.tip,
        _Role.ToolTipText: s.on_tip,
        _Role.PlaceholderText: s.placeholder,
        _Role.Highlight: s.selection,
        _Role.HighlightedText: s.on_selection,
        _Role.Accent: s.accent,
        _Role.Link: s.accent,
        _Role.LinkVisited: s.visited,
        _Role.Light: s.field,
        _Role.Midlight: s.hover,
        _Role.Mid: s.rule,
        _Role.Dark: s.edge,
        _Role.Shadow: s.faint,
    }
    made = QPalette()
    for role, colour in roles.items():
        made.setColor(role, QColor(colour))
    for role in (_Role.WindowText, _Role.Text, _Role.ButtonText, _Role.PlaceholderText):
        made.setColor(_Group.Disabled, role, QColor(s.faint))
    for role in (_Role.Base, _Role.Button):
        made.setColor(_Group.Disabled, role, QColor(s.sunken))
    return made


def style_sheet(theme: Theme) -> str:
    """Return the one style sheet of the application at the theme's zoom."""
    distances = {
        "target": theme.px(theme.spacing.target - 2),
        "least": theme.px(theme.spacing.least_target),
        "radius": theme.px(theme.spacing.radius),
        "round": theme.px(theme.spacing.card_radius),
        "d1": theme.px(1),
        "d2": theme.px(2),
        "d3": theme.px(3),
        "d4": theme.px(4),
        "d6": theme.px(6),
        "d7": theme.px(7),
        "d8": theme.px(8),
        "d9": theme.px(9),
        "d12": theme.px(12),
        "bar": theme.px(12),
        "indicator": theme.px(16),
        "scroller": 2 * theme.px(theme.spacing.least_target),
        "round_mark": theme.px(16) // 2 + 1,
    }
    roles: tuple[FontRole, ...] = ("small", "caption", "body", "strong", "heading", "title", "figure")
    points = {f"pt_{role}": f"{theme.points(role):g}pt" for role in roles}
    faces = ", ".join(f'"{face}"' for face in theme.faces)
    colours = {name: getattr(theme.surfaces, name) for name in theme.surfaces.__dataclass_fields__}
    tones = {name: tone.ink for name, tone in theme.severities.items()}
    washes = {f"{name}_wash": tone.wash for name, tone in theme.severities.items()}
    tick = resources.path("icons", "marks", "tick-dark.svg" if theme.dark else "tick-light.svg").as_posix()
    return _SHEET.substitute(distances, tick=tick, faces=faces, **points, **colours, **tones, **washes)


_SHEET = Template(
    """
QToolTip { color: $on_tip; background: $tip; border: ${d1}px solid $tip; padding: ${d4}px ${d6}px; }
QLabel[role="small"] { font-size: $pt_small; color: $soft; }
QLabel[role="caption"] { font-size: $pt_caption; color: $soft; }
QLabel[role="label"] { color: $soft; }
QLabel[role="strong"] { font-weight: 600; }
QLabel[role="heading"] { font-family: $faces; font-size: $pt_heading; font-weight: 600; }
QLabel[role="title"] { font-family: $faces; font-size: $pt_title; }
QLabel[role="figure"] { font-family: $faces; font-size: $pt_figure; }
QLabel[role="problem"] { font-size: $pt_caption; color: $fault; }

QLineEdit, QComboBox, QAbstractSpinBox, QPlainTextEdit, QTextEdit {
  background: $field; color: $ink; border: 1px solid $edge; border-radius: ${radius}px;
  selection-background-color: $selection; selection-color: $on_selection; }
QLineEdit, QComboBox { min-height: ${target}px; padding: 0 ${d7}px; margin: 0; }
QPlainTextEdit, QTextEdit { padding: ${d3}px; }
QLineEdit:hover, QComboBox:hover { background: $card; }
QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus, QTextEdit:focus {
  background: $field; border: 2px solid $focus; }
QLineEdit:focus, QComboBox:focus { padding: 0 ${d6}px; }
QLineEdit[problem="true"], QComboBox[problem="true"] { border: 2px solid $fault; padding: 0 ${d6}px; }
QLineEdit[problem="true"]:focus { border: 2px solid $focus; }
QLineEdit:disabled, QComboBox:disabled, QLineEdit[readOnly="true"] {
  background: $sunken; color: $faint; border-color: $rule; }
QLineEdit[readOnly="true"] { color: $ink; }
QComboBox { padding-right: ${bar}px; }
QComboBox::drop-down { border: none; width: ${d12}px; }
QComboBox::down-arrow { image: none; }
QComboBox QLineEdit, QComboBox QLineEdit:focus { border: none; background: transparent; padding: 0;
  min-height: 0; }
QComboBox QAbstractItemView { background: $field; color: $ink; border: 1px solid $edge;
  selection-background-color: $selection; selection-color: $on_selection; outline: 0; }
QComboBox QAbstractItemView::item { min-height: ${target}px; padding: 0 ${d6}px; }

QPushButton, QToolButton { min-height: ${target}px; padding: 0 ${d9}px; border-radius: ${radius}px;
  border: 1px solid $edge; background: $card; color: $ink; }
QToolButton { padding: 0 ${d4}px; min-width: ${target}px; }
QPushButton:hover, QToolButton:hover { background: $hover; }
QPushButton:pressed, QToolButton:pressed { background: $accent_wash; }
QPushButton:focus, QToolButton:focus { border: 2px solid $focus; padding: 0 ${d8}px; }
QToolButton:focus { padding: 0 ${d3}px; }
QPushButton:disabled, QToolButton:disabled { color: $faint; background: $sunken; border-color: $rule; }
QToolButton[quiet="true"], QPushButton[weight="quiet"] { border-color: transparent;
  background: transparent; }
QToolButton[quiet="true"]:focus, QPushButton[weight="quiet"]:focus { border-color: $focus; }
QToolButton[quiet="true"]:hover, QPushButton[weight="quiet"]:hover { background: $hover; }
QPushButton[weight="first"] { background: $accent; color: $on_accent; border-color: $accent;
  font-weight: 600; }
QPushButton[weight="first"]:hover { background: $ink; color: $card; }
QPushButton[weight="first"]:focus { background: $accent_wash; color: $accent; border-color: $focus; }
QPushButton[weight="first"]:disabled { background: $sunken; color: $faint; border-color: $rule; }
QPushButton[weight="remedy"] { color: $accent; border-color: $accent; background: $field; }
QPushButton[weight="remedy"]:hover { background: $accent_wash; }
QPushButton[weight="remedy"]:focus { border-color: $focus; background: $accent_wash; }
QPushButton[weight="link"] { border: 2px solid transparent; background: transparent; color: $accent;
  text-decoration: underline; text-align: left; min-height: ${least}px; padding: 0; }
QPushButton[weight="link"]:hover { color: $ink; }
QPushButton[weight="link"]:focus { border-color: $focus; }

QPushButton[segment="true"] { border-radius: 0; border-color: $edge; margin: 0 -1px 0 0; background: $field;
  padding: 0 ${d8}px; }
QPushButton[segment="true"][place="first"] { border-top-left-radius: ${radius}px;
  border-bottom-left-radius: ${radius}px; }
QPushButton[segment="true"][place="last"] { border-top-right-radius: ${radius}px;
  border-bottom-right-radius: ${radius}px; margin: 0; }
QPushButton[segment="true"]:hover { background: $hover; }
QPushButton[segment="true"]:checked { background: $accent; color: $on_accent; border-color: $accent;
  font-weight: 600; }
QPushButton[segment="true"]:focus { border: 2px solid $focus; padding: 0 ${d7}px; }
QPushButton[segment="true"]:checked:focus { background: $accent_wash; color: $accent; }

QCheckBox, QRadioButton { min-height: ${least}px; spacing: ${d6}px; padding: 0 ${d4}px;
  border: 2px solid transparent; border-radius: ${radius}px; }
QCheckBox:focus, QRadioButton:focus { border-color: $focus; }
QCheckBox::indicator, QRadioButton::indicator, QMenu::indicator { width: ${indicator}px;
  height: ${indicator}px; border: 1px solid $edge; background: $field; }
QCheckBox::indicator, QMenu::indicator { border-radius: ${d3}px; }
QRadioButton::indicator { border-radius: ${round_mark}px; }
QCheckBox::indicator:checked, QMenu::indicator:checked { background: $accent; border-color: $accent;
  image: url("$tick"); }
QRadioButton::indicator:checked { border-color: $accent; background: qradialgradient(cx: 0.5, cy: 0.5,
  radius: 0.5, fx: 0.5, fy: 0.5, stop: 0 $accent, stop: 0.5 $accent, stop: 0.6 $field, stop: 1 $field); }
QCheckBox::indicator:disabled, QRadioButton::indicator:disabled { border-color: $rule; background: $sunken; }

QTabBar { outline: 0; }
QTabBar::tab { min-height: ${target}px; padding: 0 ${d12}px; color: $soft; background: transparent;
  border: 2px solid transparent; border-bottom: 2px solid transparent; }
QTabBar::tab:hover { color: $ink; }
QTabBar::tab:selected { color: $ink; border-bottom-color: $accent; }
QTabBar::tab:selected:focus { border: 2px solid $focus;
  border-radius: ${radius}px; }
QTabWidget::pane { border: none; }
QTabBar::scroller { width: ${scroller}px; }
QTabBar QToolButton { min-height: 0; min-width: ${least}px; padding: 0; background: $card; }

QAbstractItemView { outline: 0; border: 1px solid $rule; background: $field;
  alternate-background-color: $card; }
QListView:focus, QTableView:focus, QTreeView:focus { border: 2px solid $focus; }
QListView::item, QTreeView::item { min-height: ${target}px; padding: 0 ${d6}px; }
QListView::item:selected, QTreeView::item:selected, QTableView::item:selected {
  background: $selection; color: $on_selection; }
QTableWidget::item { padding: ${d2}px ${d6}px; }
QHeaderView::section { background: $page; color: $soft; border: none; border-bottom: 1px solid $edge;
  padding: ${d4}px ${d6}px; }

QMenuBar { background: $page; }
QMenuBar::item { padding: ${d6}px ${d9}px; border-radius: ${radius}px; }
QMenuBar::item:selected { background: $selection; color: $on_selection; }
QMenu { background: $card; border: 1px solid $edge; padding: ${d4}px; }
QMenu::item { min-height: ${least}px; padding: 0 ${d12}px; border-radius: ${radius}px; }
QMenu::icon { padding-left: ${d4}px; }
QMenu::item:selected { background: $selection; color: $on_selection; }
QMenu::item:disabled { color: $faint; }
QMenu::separator { height: 1px; background: $rule; margin: ${d4}px ${d6}px; }
QToolBar { background: $page; border: none; border-bottom: 1px solid $rule; padding: ${d4}px ${d8}px;
  spacing: ${d4}px; }
QToolBar::separator { width: 1px; background: $rule; margin: ${d4}px ${d6}px; }
QStatusBar { background: $page; color: $soft; border-top: 1px solid $rule; }
QStatusBar::item { border: none; }

QScrollArea { border: none; background: transparent; }
QScrollArea > QWidget > QWidget[plain="true"] { background: transparent; }
QScrollBar:vertical { width: ${bar}px; background: transparent; margin: 0; }
QScrollBar:horizontal { height: ${bar}px; background: transparent; margin: 0; }
QScrollBar::handle { background: $edge; border-radius: ${d3}px; margin: ${d3}px; min-height: ${target}px;
  min-width: ${target}px; }
QScrollBar::handle:hover { background: $soft; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QSplitter::handle { background: $rule; }
QSplitter::handle:horizontal { width: 1px; }
QSplitter::handle:vertical { height: 1px; }
QGroupBox { border: 1px solid $rule; border-radius: ${round}px; margin-top: ${d12}px; padding-top: ${d6}px; }
QGroupBox::title { subcontrol-origin: margin; left: ${d9}px; padding: 0 ${d4}px; color: $soft; }
QProgressBar { border: 1px solid $edge; border-radius: ${radius}px; background: $field; text-align: center;
  color: $ink; min-height: ${d12}px; }
QProgressBar::chunk { background: $accent_wash; }

QFrame[sheet="card"] { background: $card; border: 1px solid $rule; border-radius: ${round}px; }
QFrame[sheet="card"][chosen="true"] { border: 2px solid $focus; }
QFrame[sheet="card"]:focus { border: 2px solid $focus; }
QFrame[sheet="toast"] { background: $tip; border: 1px solid $tip; border-radius: ${round}px; }
QFrame[sheet="toast"] QLabel { color: $on_tip; }
QFrame[sheet="toast"] QPushButton { color: $on_tip; border-color: $on_tip; background: $tip; }
QFrame[sheet="toast"] QPushButton:focus { background: $on_tip; color: $tip; }
QLabel[chip="understood"] { background: $accent_wash; color: $ink; border: 1px solid $accent_wash;
  border-radius: ${d9}px; padding: ${d2}px ${d8}px; font-size: $pt_caption; }
QLabel[chip="doubtful"] { background: $risk_wash; color: $ink; border: 1px dashed $risk;
  border-radius: ${d9}px; padding: ${d2}px ${d8}px; font-size: $pt_caption; }
QLabel[chip="not understood"] { background: $field; color: $ink; border: 2px solid $fault; border-radius: 0;
  padding: ${d1}px ${d7}px; font-size: $pt_caption; }
QToolButton[fold="true"] { border: 2px solid transparent; background: transparent; padding: 0 ${d2}px; }
QToolButton[fold="true"]:hover { background: $hover; }
QToolButton[fold="true"]:focus { border-color: $focus; }
"""
)
