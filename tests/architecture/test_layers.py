"""Arrows point one way: each layer imports only what the table allows, and nothing imports in a circle."""

import sys
from graphlib import CycleError, TopologicalSorter

import pytest

from tests.architecture.code import PROJECT, Module, modules
from tests.architecture.layers import TABLE, as_markdown, is_within, layer_of, row_of

MODULES = modules()
CODE = [module for module in MODULES if layer_of(module.name)]


def _strangers(module: Module) -> list[str]:
    """Return what a module imports although its row does not allow it."""
    layer = layer_of(module.name)
    row = row_of(layer)
    found = []
    for item in module.imports:
        if item.name.split(".")[0] in sys.stdlib_module_names or item.name == "rigbuilder":
            continue
        own = item.name.startswith("rigbuilder.")
        name = item.name.removeprefix("rigbuilder.")
        allowed = (*row.own, layer) if own else row.outside
        if item.deferred:
            allowed += row.deferred
        if not is_within(name, allowed):
            found.append(f"{module.path.relative_to(PROJECT)}:{item.line} imports {item.name}")
    return found


@pytest.mark.parametrize("module", CODE, ids=lambda module: module.name)
def test_a_module_imports_only_what_its_layer_may(module: Module) -> None:
    assert _strangers(module) == []


@pytest.mark.parametrize(
    ("name", "source", "strangers"),
    [
        ("rigbuilder.units.a", "from rigbuilder.model import rig", 1),
        ("rigbuilder.units.a", "from rigbuilder.sources import Kind\nimport math", 0),
        ("rigbuilder.mechanics.a", "import scipy.optimize", 1),
        ("rigbuilder.mechanics.a", "def f():\n    import scipy.optimize", 0),
        ("rigbuilder.viewmodels.a", "from PySide6 import QtWidgets", 1),
        ("rigbuilder.viewmodels.a", "from PySide6.QtCore import QObject", 0),
        ("rigbuilder.views.a", "from rigbuilder.review.core import Finding", 0),
        ("rigbuilder.views.a", "from rigbuilder.review.chart import Cell", 1),
        ("rigbuilder.cli", "from rigbuilder.app import run", 1),
        ("rigbuilder.cli", "def main():\n    from rigbuilder.app import run", 0),
        ("rigbuilder.model.a", "from ..store import cards", 1),
    ],
)
def test_the_walk_itself_sees_strangers(name: str, source: str, strangers: int) -> None:
    # The file lies inside the project in name only, so that paths print as usual.
    module = Module(name, PROJECT / "made_up.py")
    module.__dict__["text"] = source
    assert len(_strangers(module)) == strangers


def test_every_layer_has_a_row() -> None:
    known = {name for row in TABLE for name in row.names}
    assert {layer_of(module.name) for module in CODE} <= known


def test_nothing_imports_in_a_circle() -> None:
    names = {module.name for module in MODULES}
    graph = {
        module.name: {item.name for item in module.imports if item.name in names} - {module.name}
        for module in MODULES
    }
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as error:
        pytest.fail(" → ".join(error.args[1]))


def test_the_contributors_guide_quotes_the_table() -> None:
    assert as_markdown() in (PROJECT / "DEVELOPERS.md").read_text(encoding="utf-8")
