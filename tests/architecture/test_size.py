"""One reason to exist each: modules, functions and classes stay small."""

import ast

import pytest

from tests.architecture.code import Module, body_lines, modules

MODULE_LINES = 300
FUNCTION_LINES = 40
CLASS_METHODS = 15

EXCEPTIONS: dict[str, str] = {}
"""What may be larger, as ``module:name`` (or the module alone), each with its reason."""


def _too_large(module: Module) -> dict[str, str]:
    found = {}
    lines = len(module.text.splitlines())
    if lines > MODULE_LINES:
        found[module.name] = f"{lines} lines"
    for name, node in module.definitions:
        if isinstance(node, ast.ClassDef):
            methods = sum(isinstance(part, (ast.FunctionDef, ast.AsyncFunctionDef)) for part in node.body)
            if methods > CLASS_METHODS:
                found[f"{module.name}:{name}"] = f"{methods} methods"
        elif (length := body_lines(node)) > FUNCTION_LINES:
            found[f"{module.name}:{name}"] = f"{length} lines"
    return found


@pytest.mark.parametrize("module", modules(), ids=lambda module: module.name)
def test_a_module_and_its_parts_are_small(module: Module) -> None:
    assert {what: size for what, size in _too_large(module).items() if what not in EXCEPTIONS} == {}


def test_exceptions_are_still_needed_and_have_a_reason() -> None:
    large = {what for module in modules() for what in _too_large(module)}
    assert set(EXCEPTIONS) <= large
    assert all(EXCEPTIONS.values())


def test_the_measure_leaves_the_docstring_out() -> None:
    tree = ast.parse('def f(x):\n    """One.\n\n    Two.\n    """\n    return x\n')
    node = tree.body[0]
    assert isinstance(node, ast.FunctionDef)
    assert body_lines(node) == 2
