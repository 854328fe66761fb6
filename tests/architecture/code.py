"""The program's source as syntax trees: what the tests of its build look at."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[2]
PACKAGE = PROJECT / "rigbuilder"

type_of_function = (ast.FunctionDef, ast.AsyncFunctionDef)
Definition = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef


@dataclass(frozen=True)
class Import:
    """One name that a module imports, with its line, and whether it happens inside a function."""

    name: str
    line: int
    deferred: bool


@dataclass(frozen=True)
class Module:
    """One source file of the package."""

    name: str
    path: Path

    @cached_property
    def text(self) -> str:
        """The source."""
        return self.path.read_text(encoding="utf-8")

    @cached_property
    def tree(self) -> ast.Module:
        """The syntax tree."""
        return ast.parse(self.text, filename=str(self.path))

    @cached_property
    def imports(self) -> tuple[Import, ...]:
        """Every import; ``from a import b`` counts as ``a.b`` where that is a module of the package."""
        return tuple(self._imports(self.tree, deferred=False))

    def _imports(self, node: ast.AST, *, deferred: bool) -> Iterator[Import]:
        for child in ast.iter_child_nodes(node):
            if isinstance(child, ast.Import):
                for alias in child.names:
                    yield Import(alias.name, child.lineno, deferred)
            elif isinstance(child, ast.ImportFrom):
                for name in self._names(child):
                    yield Import(name, child.lineno, deferred)
            else:
                yield from self._imports(child, deferred=deferred or isinstance(child, type_of_function))

    def _names(self, node: ast.ImportFrom) -> Iterator[str]:
        origin = node.module or ""
        if node.level:
            package = self.name.split(".") if self.path.name == "__init__.py" else self.name.split(".")[:-1]
            above = package[: len(package) - node.level + 1]
            origin = ".".join([*above, *([node.module] if node.module else [])])
        for alias in node.names:
            below = f"{origin}.{alias.name}"
            yield below if _is_module(below) or origin == "PySide6" else origin

    @cached_property
    def definitions(self) -> tuple[tuple[str, Definition], ...]:
        """Each function and class with its dotted name inside the module."""
        return tuple(_definitions(self.tree, ""))


@cache
def _is_module(name: str) -> bool:
    place = PROJECT.joinpath(*name.split("."))
    return place.with_suffix(".py").is_file() or (place / "__init__.py").is_file()


def _definitions(node: ast.AST, prefix: str) -> Iterator[tuple[str, Definition]]:
    for child in ast.iter_child_nodes(node):
        if isinstance(child, (ast.FunctionDef, ast.AsyncFunctionDef, ast.ClassDef)):
            name = f"{prefix}{child.name}"
            yield name, child
            yield from _definitions(child, f"{name}.")
        else:
            yield from _definitions(child, prefix)


@cache
def modules() -> tuple[Module, ...]:
    """Return every module of the package, sorted by name; each is read and parsed once for all tests."""
    found = []
    for path in sorted(PACKAGE.rglob("*.py")):
        parts = path.relative_to(PROJECT).with_suffix("").parts
        found.append(Module(".".join(parts[:-1] if parts[-1] == "__init__" else parts), path))
    return tuple(found)


def body_lines(node: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Return how many lines a function takes from its ``def``, without its docstring."""
    length = (node.end_lineno or node.lineno) - node.lineno + 1
    first = node.body[0]
    if ast.get_docstring(node, clean=False) is not None and first.end_lineno is not None:
        length -= first.end_lineno - first.lineno + 1
    return length
