"""The same figures as text: for the clipboard, for a spreadsheet, for those who listen."""

from rigbuilder.plans import sheet
from rigbuilder.views.paint.spec import BarSpec, ChartSpec, Series
from rigbuilder.views.paint.ticks import number

Figure = ChartSpec | BarSpec
Row = tuple[str, ...]


def as_table(spec: Figure) -> tuple[Row, ...]:
    """Return head and rows of a figure; numbers are written in full, with a decimal point."""
    return _bar_table(spec) if isinstance(spec, BarSpec) else _chart_table(spec)


def as_csv(spec: Figure) -> str:
    """Return the table as comma-separated values, UTF-8 text; no cell can start a formula."""
    head, *rows = as_table(spec)
    return sheet.as_csv(sheet.Sheet(spec.title, head, tuple(rows)))


def as_text(spec: Figure) -> str:
    """Return title, answer and an aligned table as plain text."""
    rows = as_table(spec)
    widths = [max(len(row[k]) for row in rows) for k in range(len(rows[0]))]
    lines = [text for text in (spec.title, spec.answer) if text]
    lines.extend(
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows
    )
    if spec.note:
        lines.append(spec.note)
    return "\n".join(lines)


def describe(spec: Figure) -> str:
    """Return what a figure says in a few sentences, with its key numbers."""
    parts = [text for text in (spec.title, spec.answer) if text]
    if isinstance(spec, BarSpec):
        unit = spec.axis.unit
        for bar in spec.bars:
            spread = f", {number(bar.low)} to {number(bar.high)}" if bar.low != bar.high else ""
            parts.append(f"{bar.label}: {bar.text or f'{number(bar.typical)} {unit}'.strip()}{spread}.")
    else:
        parts.append(f"{spec.y.title} over {spec.x.title}.")
        parts.extend(_spoken(spec, series) for series in spec.series if series.points)
    parts.extend(f"Limit: {limit.label}, {number(limit.value)}." for limit in spec.limits)
    return " ".join(parts)


def _spoken(spec: ChartSpec, series: Series) -> str:
    (x0, y0), (x1, y1) = series.points[0], series.points[-1]
    start = f"{number(y0)} {spec.y.unit}".strip() + f" at {number(x0)} {spec.x.unit}".rstrip()
    end = f"{number(y1)} {spec.y.unit}".strip() + f" at {number(x1)} {spec.x.unit}".rstrip()
    return f"{series.label}: {start}, {end}."


def _chart_table(spec: ChartSpec) -> tuple[Row, ...]:
    rows: list[Row] = [("line", spec.x.title, "low", spec.y.title, "high")]
    for series in spec.series:
        band = {x: (low, high) for x, low, high in series.band}
        for x, y in series.points:
            low, high = band.get(x, (y, y))
            rows.append((series.label, *(_full(value) for value in (x, low, y, high))))
    rows.extend(("limit: " + limit.label, *_limit_cells(limit.axis, limit.value)) for limit in spec.limits)
    return tuple(rows)


def _limit_cells(axis: str, value: float) -> Row:
    return (_full(value), "", "", "") if axis == "x" else ("", "", _full(value), "")


def _bar_table(spec: BarSpec) -> tuple[Row, ...]:
    rows: list[Row] = [("part", "low", spec.axis.title, "high", "remark")]
    rows.extend(
        (bar.label, _full(bar.low), _full(bar.typical), _full(bar.high), bar.text) for bar in spec.bars
    )
    rows.extend(("limit: " + limit.label, "", _full(limit.value), "", "") for limit in spec.limits)
    return tuple(rows)


def _full(value: float) -> str:
    return f"{value:.6g}"
