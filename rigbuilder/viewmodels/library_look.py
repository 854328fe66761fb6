"""One card looked at from the library: what the review says of it, or why it cannot be read."""

from dataclasses import dataclass
from pathlib import Path

from rigbuilder.review.explain import verdict_words
from rigbuilder.review.many import UNFINISHED, review_documents
from rigbuilder.store.errors import shown
from rigbuilder.store.listing import read_entry
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.library_versions import salvaged
from rigbuilder.viewmodels.reasons import capital
from rigbuilder.viewmodels.scene import RigScene, scene_of


@dataclass(frozen=True, slots=True)
class CardLook:
    """A card in short; ``lines`` are severity and sentence, or what could be read of a broken one."""

    name: str
    place: str
    verdict: str
    words: str
    lines: tuple[tuple[str, str], ...]
    notes: str = ""
    scene: RigScene | None = None


def look_at_card(path: Path, bench: Bench) -> CardLook:
    """Read and review one card as it is on the disk now."""
    entry = read_entry(path)
    document = entry.document
    if document is None:
        reason, pairs = salvaged(path)
        told = dict(pairs)
        lines = tuple(("", f"{key}: {value}") for key, value in pairs)
        return CardLook(told.get("name", shown(path.stem)), shown(path), "broken", reason, lines)
    name = str(document.get("name") or shown(path.stem))
    notes = document.get("notes")
    about = notes if isinstance(notes, str) else ""
    ((reading, report),) = review_documents([document], bench.reference, bench.house)
    if report is None:
        problems = tuple(("", str(problem)) for problem in reading.problems)
        return CardLook(name, shown(path), UNFINISHED, "unfinished", problems, about)
    reasons = tuple(
        (found.severity.word, capital(found.headline(bench.speaker))) for found in report.findings
    )
    words = verdict_words([found.severity for found in report.findings])
    scene = scene_of(report, bench.speaker)
    return CardLook(name, shown(path), report.verdict.word, words, reasons, about, scene)
