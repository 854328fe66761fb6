"""Habits no linter knows: looks in one place, no data run as code, no hidden imports."""

import ast
import re
from collections.abc import Iterator

import pytest

from tests.architecture.code import PACKAGE, Module, modules

MODULES = modules()
HEX_COLOUR = re.compile(r"#(?:[0-9a-fA-F]{8}|[0-9a-fA-F]{6})\b|^#[0-9a-fA-F]{3}$")
RUNS_DATA = {"pickle", "marshal", "shelve", "dill"}


def _is_theme(module: Module) -> bool:
    return module.path.relative_to(PACKAGE).as_posix().startswith("views/theme")


def _called(node: ast.Call) -> str:
    """Return the last part of the name that is called."""
    return node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")


def _fixed_looks(tree: ast.AST) -> Iterator[str]:
    """Yield each colour or pixel size that is written down in the code."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and HEX_COLOUR.search(node.value):
            yield f"line {node.lineno}: colour {node.value!r}"
        elif isinstance(node, ast.Attribute) and ast.unparse(node).startswith(
            ("Qt.GlobalColor.", "QtCore.Qt.GlobalColor.")
        ):
            if node.attr != "transparent":
                yield f"line {node.lineno}: colour {node.attr}"
        elif isinstance(node, ast.Call):
            name = _called(node)
            if name == "setPixelSize":
                yield f"line {node.lineno}: setPixelSize"
            is_colour = name == "QColor" or ast.unparse(node.func).startswith("QColor.from")
            if is_colour and any(isinstance(argument, ast.Constant) for argument in node.args):
                yield f"line {node.lineno}: {ast.unparse(node)}"


def _dangers(tree: ast.AST) -> Iterator[str]:
    """Yield each construct that could run data as code, or a shell."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import | ast.ImportFrom):
            names = [alias.name for alias in node.names] + [getattr(node, "module", None) or ""]
            for name in names:
                if name.split(".")[0] in RUNS_DATA:
                    yield f"line {node.lineno}: {name}"
        elif isinstance(node, ast.Call):
            name = ast.unparse(node.func)
            if name in {"eval", "exec", "yaml.load", "os.system", "os.popen"}:
                yield f"line {node.lineno}: {name}"
            if any(word.arg == "shell" and ast.unparse(word.value) != "False" for word in node.keywords):
                yield f"line {node.lineno}: shell="


@pytest.mark.parametrize("module", [m for m in MODULES if not _is_theme(m)], ids=lambda module: module.name)
def test_colours_and_sizes_come_from_the_theme(module: Module) -> None:
    assert list(_fixed_looks(module.tree)) == []


def _is_own_words(text: ast.expr) -> bool:
    """Tell whether a text stands in the source, or goes through ``literal``."""
    if isinstance(text, ast.IfExp):
        return _is_own_words(text.body) and _is_own_words(text.orelse)
    called = text.func if isinstance(text, ast.Call) else text
    return isinstance(text, ast.Constant) or (
        isinstance(called, ast.Name) and (called.id == "literal" or called.id.isupper())
    )


def test_what_a_card_says_is_no_markup_in_a_tip() -> None:
    found = [
        f"{module.name}, line {node.lineno}"
        for module in MODULES
        for node in ast.walk(module.tree)
        if isinstance(node, ast.Call)
        and ast.unparse(node.func).endswith(".setToolTip")
        and not _is_own_words(node.args[0])
    ]
    assert found == []


@pytest.mark.parametrize("module", MODULES, ids=lambda module: module.name)
def test_data_is_never_run_as_code(module: Module) -> None:
    assert list(_dangers(module.tree)) == []


@pytest.mark.parametrize("module", MODULES, ids=lambda module: module.name)
def test_no_import_is_hidden_from_the_layer_table(module: Module) -> None:
    assert "TYPE_CHECKING" not in module.text
    assert "importlib.import_module" not in module.text
    assert "__import__" not in module.text


@pytest.mark.parametrize(
    "module", [m for m in MODULES if m.path.name == "__init__.py"], ids=lambda module: module.name
)
def test_packages_do_not_import_their_parts(module: Module) -> None:
    assert list(module.imports) == []


@pytest.mark.parametrize(
    "source",
    [
        "c = '#1a2b3c'",
        "QColor('red')",
        "QColor(1, 2, 3)",
        "QColor.fromRgb(1, 2, 3)",
        "f.setPixelSize(9)",
        "x = Qt.GlobalColor.red",
    ],
)
def test_the_walk_itself_sees_fixed_looks(source: str) -> None:
    assert len(list(_fixed_looks(ast.parse(source)))) == 1


@pytest.mark.parametrize(
    "source", ["hook = '#1/0'", "QColor(name)", "x = Qt.GlobalColor.transparent", "size = '#10'"]
)
def test_the_walk_itself_lets_other_things_be(source: str) -> None:
    assert list(_fixed_looks(ast.parse(source))) == []


@pytest.mark.parametrize(
    "source", ["import pickle", "from pickle import loads", "eval('1')", "yaml.load(x)", "run(x, shell=True)"]
)
def test_the_walk_itself_sees_dangers(source: str) -> None:
    assert len(list(_dangers(ast.parse(source)))) == 1
