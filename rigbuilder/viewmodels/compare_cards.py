"""Cards picked in the library, and the one on the bench, ready to be compared."""

from collections.abc import Sequence
from pathlib import Path

from rigbuilder.store.errors import StoreError
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.compare import Comparison, compare
from rigbuilder.viewmodels.desk import Desk

BENCH = "On the bench"


def compare_cards(paths: Sequence[Path], desk: Desk, bench: Bench, *, with_bench: bool) -> Comparison | str:
    """Compare cards by their files, with the bench's rig first if asked; a sentence if that cannot be."""
    try:
        documents = [desk.store.load(path).document for path in paths]
    except StoreError as trouble:
        return str(trouble)
    if with_bench:
        name = str(bench.document.get("name") or "")
        documents.insert(0, bench.document | {"name": f"{BENCH}: {name}" if name else BENCH})
    try:
        return compare(documents, bench.reference, bench.house, bench.speaker)
    except ValueError:
        return "Choose two or three cards to compare."
