"""Plain tables of plans, and their export: what opens in a spreadsheet must not start a formula there."""

import csv
from dataclasses import dataclass
from io import StringIO

_STARTS_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")


@dataclass(frozen=True, slots=True)
class Sheet:
    """A table of texts: title, head, rows; a remark may stand below."""

    title: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""


def as_csv(sheet: Sheet) -> str:
    """Return the table as comma-separated values (RFC 4180); no cell can start a formula."""
    out = StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    for row in (sheet.head, *sheet.rows):
        writer.writerow([harmless(cell) for cell in row])
    return out.getvalue()


def as_text(sheet: Sheet) -> str:
    """Return title, aligned table and remark as plain text."""
    rows = (sheet.head, *sheet.rows)
    widths = [max(len(row[place]) for row in rows) for place in range(len(sheet.head))]
    lines = [sheet.title]
    for row in rows:
        cells = (cell.ljust(width) for cell, width in zip(row, widths, strict=True))
        lines.append(f"  {'  '.join(cells)}".rstrip())
    if sheet.note:
        lines.append(f"  {sheet.note}")
    return "\n".join(lines)


def harmless(cell: str) -> str:
    """Return a cell that a spreadsheet takes as text; plain numbers stay numbers."""
    try:
        float(cell)
    except ValueError:
        return f"'{cell}" if cell.lstrip().startswith(_STARTS_FORMULA) else cell
    return cell
