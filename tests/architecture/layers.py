"""The import table as data: what each layer may import besides the standard library and itself.

DEVELOPERS.md quotes it; a test holds the two together.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Layer:
    """One row of the table.

    ``own`` and ``outside`` are the project's modules and the outside packages allowed; ``deferred`` is what
    may be imported only inside the function that needs it. ``says`` is the row as people read it.
    """

    names: tuple[str, ...]
    says: str
    own: tuple[str, ...] = ()
    outside: tuple[str, ...] = ()
    deferred: tuple[str, ...] = ()

    @property
    def title(self) -> str:
        """The row's first cell."""
        return ", ".join(self.names)


_BELOW_PLANS = ("resources", "sources", "units", "reference", "model", "mechanics", "review")
_BELOW_VIEWMODELS = (*_BELOW_PLANS, "plans", "lessons", "store")
_OUTSIDE = ("numpy", "pydantic", "pydantic_core", "platformdirs")

TABLE = (
    Layer(("resources", "sources"), "nothing"),
    Layer(("units",), "sources", own=("sources",)),
    Layer(
        ("reference",),
        "units, sources, resources, pydantic",
        own=("units", "sources", "resources"),
        outside=("pydantic", "pydantic_core"),
    ),
    Layer(
        ("model",),
        "units, sources, reference, resources, pydantic",
        own=("units", "sources", "reference", "resources"),
        outside=("pydantic", "pydantic_core"),
    ),
    Layer(
        ("mechanics",),
        "units, sources, numpy; scipy only inside the function that needs it",
        own=("units", "sources"),
        outside=("numpy",),
        deferred=("scipy",),
    ),
    Layer(
        ("review",),
        "units, sources, reference, model, mechanics, numpy",
        own=("units", "sources", "reference", "model", "mechanics"),
        outside=("numpy",),
    ),
    Layer(
        ("plans", "lessons"), "all above", own=_BELOW_PLANS, outside=("numpy", "pydantic", "pydantic_core")
    ),
    Layer(
        ("store",),
        "units, reference, model, lessons, platformdirs, pydantic, tomli_w",
        own=("units", "reference", "model", "lessons"),
        outside=("platformdirs", "pydantic", "pydantic_core", "tomli_w"),
    ),
    Layer(
        ("viewmodels",),
        "all above, PySide6.QtCore, PySide6.QtGui",
        own=_BELOW_VIEWMODELS,
        outside=(*_OUTSIDE, "PySide6.QtCore", "PySide6.QtGui"),
    ),
    Layer(
        ("views",),
        "units, model, resources, viewmodels, PySide6, types of review.core and plans",
        own=("units", "model", "resources", "viewmodels", "review.core", "plans"),
        outside=("PySide6",),
    ),
    Layer(
        ("cli", "commands", "__main__"),
        "everything but Qt layers; `app` only inside the command that opens the window",
        own=("cli", "commands", *_BELOW_VIEWMODELS),
        outside=_OUTSIDE,
        deferred=("app", "scipy"),
    ),
    Layer(
        ("app",),
        "everything",
        own=(*_BELOW_VIEWMODELS, "viewmodels", "views"),
        outside=(*_OUTSIDE, "PySide6", "scipy"),
    ),
)

QT_LAYERS = ("viewmodels", "views", "app")
"""The only layers that may know Qt."""


def layer_of(module: str) -> str:
    """Return the layer of a module such as ``rigbuilder.units.quantity``; nothing for the bare package."""
    parts = module.split(".")
    return parts[1] if len(parts) > 1 else ""


def row_of(layer: str) -> Layer:
    """Return the row of one layer.

    Raises:
        KeyError: if the table has no such layer.
    """
    for row in TABLE:
        if layer in row.names:
            return row
    raise KeyError(layer)


def is_within(name: str, allowed: tuple[str, ...]) -> bool:
    """Say whether a dotted name is one of the allowed ones or lies below one of them."""
    return any(name == prefix or name.startswith(f"{prefix}.") for prefix in allowed)


def as_markdown() -> str:
    """Return the table as DEVELOPERS.md quotes it."""
    lines = ["| layer | may import (besides the standard library) |", "|---|---|"]
    lines += [f"| {row.title} | {row.says} |" for row in TABLE]
    return "\n".join(lines)
