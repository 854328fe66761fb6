"""Public code says what it does; a formula says its units and where it comes from."""

import ast
import re

import pytest

from tests.architecture.code import Module, modules, type_of_function
from tests.architecture.layers import QT_LAYERS, layer_of

MODULES = modules()
MECHANICS = [module for module in MODULES if layer_of(module.name) == "mechanics"]

# Qt's own names, which Qt explains; its other names have a capital inside.
QT_OVERRIDES = {"data", "index", "parent", "flags", "event", "undo", "redo", "id", "paint"}


def _needs_docstring(module: Module, name: str, node: ast.AST) -> bool:
    parts = name.split(".")
    if any(part.startswith("_") for part in parts):
        return False
    if not isinstance(node, type_of_function):
        return True
    decorators = [ast.unparse(decorator) for decorator in node.decorator_list]
    if any(text.endswith((".setter", "overload")) for text in decorators):
        return False
    is_qt = layer_of(module.name) in QT_LAYERS and len(parts) > 1
    return not (is_qt and (parts[-1] in QT_OVERRIDES or parts[-1] != parts[-1].lower()))


def _local_functions(tree: ast.Module) -> set[ast.AST]:
    """Return what is defined inside functions, which nobody outside can call."""
    inside: set[ast.AST] = set()
    for node in ast.walk(tree):
        if isinstance(node, type_of_function):
            inside.update(child for child in ast.walk(node) if child is not node)
    return inside


@pytest.mark.parametrize("module", MODULES, ids=lambda module: module.name)
def test_public_functions_and_classes_have_docstrings(module: Module) -> None:
    local = _local_functions(module.tree)
    silent = [
        f"{name} (line {node.lineno})"
        for name, node in module.definitions
        if node not in local and _needs_docstring(module, name, node) and not ast.get_docstring(node)
    ]
    assert silent == []


@pytest.mark.parametrize("module", [m for m in MODULES if m.text.strip()], ids=lambda module: module.name)
def test_a_module_says_why_it_exists(module: Module) -> None:
    assert ast.get_docstring(module.tree)


def _sections(docstring: str) -> dict[str, str]:
    """Split a docstring into its underlined sections."""
    parts = re.split(r"^([A-Z][A-Za-z ]+)\n-{3,}\n", docstring, flags=re.MULTILINE)
    return dict(zip(parts[1::2], parts[2::2], strict=True))


def _entries(section: str) -> list[tuple[str, str]]:
    """Return the head and the text of each entry: a head stands at the margin, its text is set in."""
    pairs = re.findall(r"^(\S.*)\n((?:[ \t]+.*\n?|\n)*)", section.strip() + "\n", flags=re.MULTILINE)
    return [(head, text.strip()) for head, text in pairs]


def _annotation(argument: ast.arg) -> str:
    return ast.unparse(argument.annotation) if argument.annotation else ""


def _formulas(module: Module) -> list[ast.FunctionDef | ast.AsyncFunctionDef]:
    """Return the public functions of a module that take numbers."""
    return [
        node
        for node in module.tree.body
        if isinstance(node, type_of_function) and not node.name.startswith("_")
        if any("ArrayLike" in _annotation(a) or "float" in _annotation(a) for a in node.args.kwonlyargs)
    ]


FORMULAS = [pytest.param(node, id=f"{m.name}.{node.name}") for m in MECHANICS for node in _formulas(m)]


@pytest.mark.parametrize("node", FORMULAS)
def test_a_formula_names_parameters_units_and_reference(node: ast.FunctionDef) -> None:
    sections = _sections(ast.get_docstring(node) or "")
    assert {"Parameters", "Returns", "References"} <= set(sections)
    parameters = _entries(sections["Parameters"])
    described = [name.strip() for head, _ in parameters for name in head.split(" : ")[0].split(",")]
    assert sorted(described) == sorted(a.arg for a in (*node.args.args, *node.args.kwonlyargs))
    entries = parameters + _entries(sections["Returns"])
    assert [head for head, text in entries if not re.search(r"\[[^\[\]]+\]\.?$", text)] == [], (
        "no [unit] at the end"
    )
    assert re.search(r"\b(COMPUTED|DERIVED|PUBLISHED|COMMON PRACTICE|MEMORY)\b", sections["References"])


@pytest.mark.parametrize("module", MECHANICS, ids=lambda module: module.name)
def test_formulas_take_their_numbers_by_name(module: Module) -> None:
    swappable = [
        f"{node.name} (line {node.lineno})"
        for node in module.tree.body
        if isinstance(node, type_of_function) and not node.name.startswith("_")
        if sum("ArrayLike" in _annotation(a) or "float" in _annotation(a) for a in node.args.args) > 1
    ]
    assert swappable == []
