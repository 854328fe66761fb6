"""What stands on a printed sheet: labels, settings, fill, knots, reasons, checks and cautions in words."""

from collections.abc import Sequence
from dataclasses import dataclass

from rigbuilder.model.document import Document, get
from rigbuilder.plans.dragplan import drag_plan
from rigbuilder.plans.fill import fill_plan
from rigbuilder.plans.fillwords import count_words, headline
from rigbuilder.review.bench_checks import checks_for
from rigbuilder.review.case import Case
from rigbuilder.review.cautions import cautions_for
from rigbuilder.review.engine import Report as Report
from rigbuilder.review.speak import Speaker as Speaker
from rigbuilder.viewmodels.prospects import verdict
from rigbuilder.viewmodels.reasons import capital, reasons
from rigbuilder.viewmodels.scene import RigScene, line_words, scene_of

SURE, STEPS, REMARK, EXTRA = range(4)
"""How soon a paragraph may be left out: never, then steps of knots, then remarks, extra checks first."""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """One paragraph: its words, a severity for a sign, a number for a pin.

    ``spare`` says how soon it may be left out where room is short; 0 is never.
    """

    text: str
    strong: bool = False
    severity: str = ""
    number: int | None = None
    spare: int = 0


@dataclass(frozen=True, slots=True)
class Block:
    """A heading with its paragraphs."""

    title: str
    paragraphs: tuple[Paragraph, ...]


@dataclass(frozen=True, slots=True)
class SheetContent:
    """The whole sheet; ``blocks`` stand in order of importance."""

    title: str
    technique: str
    verdict: str
    severity: str
    scene: RigScene
    blocks: tuple[Block, ...]


def sheet_content(document: Document, report: Report, speaker: Speaker) -> SheetContent:
    """Return what stands on the sheet of a card."""
    case = report.case
    said = verdict(report)
    blocks = (
        _labels(document, case, speaker),
        _settings(case, speaker),
        _reasons(report, speaker),
        _knots(case),
        _few("Bench checks", [check.say for check in checks_for(case)], 6),
        _few("Cautions", [f"{row.topic}: {row.says}" for row in cautions_for(case)], 3),
    )
    return SheetContent(
        title=case.rig.name, technique=f"{case.technique.name}, {speaker.lure(case.rig.lure.total_kg)}",
        verdict=capital(said.text), severity=said.severity, scene=scene_of(report, speaker),
        blocks=tuple(block for block in blocks if block.paragraphs),
    )  # fmt: skip


def _few(title: str, texts: Sequence[str], sure: int) -> Block:
    """Return a block whose first texts are always printed, the others where there is room."""
    return Block(
        title,
        tuple(Paragraph(text, spare=EXTRA if place >= sure else SURE) for place, text in enumerate(texts)),
    )


def _labels(document: Document, case: Case, speaker: Speaker) -> Block:
    rig = case.rig
    found = [Paragraph(f"Rod: {text}") for text in [_said(document, "rod.label")] if text]
    found += [Paragraph(f"Reel: {text}") for text in [_said(document, "reel.label")] if text]
    found.append(Paragraph(f"Main line: {line_words(rig.main, speaker)}"))
    if rig.leader is not None:
        length = "" if rig.leader.length_m is None else f", {speaker.leader(rig.leader.length_m)}"
        found.append(Paragraph(f"Leader: {line_words(rig.leader, speaker)}{length}"))
    else:
        found.append(Paragraph("Leader: none"))
    if rig.backing is not None:
        found.append(Paragraph(f"Backing: {line_words(rig.backing, speaker)}"))
    notes = _said(document, "notes")
    return Block("Labels", (*found, *([Paragraph(notes, spare=REMARK)] if notes else [])))


def _said(document: Document, path: str) -> str:
    found = get(document, path)
    return found if isinstance(found, str) else ""


def _settings(case: Case, speaker: Speaker) -> Block:
    plan = fill_plan(case)
    drag, shown = drag_plan(case, plan), plan.feasible
    found = [Paragraph(f"Fill: {headline(plan, speaker)}")]
    turns = [f"{count_words(shown.main.turns)} turns of line"]
    if shown.backing is not None and shown.backing.length_m.typical > 0.0:
        turns.insert(0, f"{count_words(shown.backing.turns)} turns of backing")
    found.append(Paragraph(f"Turns of the handle: {', then '.join(turns)}"))
    found.append(Paragraph(f"Drag on the scale: {speaker.forces(drag.straight.value)}, rod pointed at it"))
    if case.rig.drag_n is not None:
        found.append(Paragraph(f"Drag on the card: {speaker.force(case.rig.drag_n)}"))
    weakest = case.facts.weakest
    found.append(Paragraph(f"Weakest link: {weakest.name}, {speaker.forces(weakest.strength_n)}"))
    if case.rig.cast_m is not None:
        found.append(Paragraph(f"Cast: {speaker.cast(case.rig.cast_m)}"))
    return Block("Settings", tuple(found))


def _reasons(report: Report, speaker: Speaker) -> Block:
    found = tuple(
        Paragraph(reason.headline, severity=reason.severity, number=reason.number)
        for reason in reasons(report, speaker)
    )
    right = tuple(
        Paragraph(capital(words), severity="right", spare=REMARK) for _, words in report.right(speaker)[:4]
    )
    if not found:
        found = (Paragraph("Nothing speaks against this rig", severity="right"),)
    return Block("Reasons", found + right)


def _knots(case: Case) -> Block:
    rig = case.rig
    places = [("To the lure", rig.knots.lure), ("On the arbor", rig.knots.arbor)]
    if rig.leader is not None:
        places.insert(1, ("Line to leader", rig.leader.knot))
    if rig.backing is not None:
        places.insert(-1, ("Line to backing", rig.backing.knot))
    found: list[Paragraph] = []
    for where, name in places:
        if name is None:
            continue
        knot = case.reference.knots.get(name)
        found.append(Paragraph(f"{where}: {name}", strong=True))
        if knot is not None:
            steps = " ".join(f"{k}. {step}" for k, step in enumerate(knot.steps, start=1))
            found.append(Paragraph(steps, spare=STEPS))
    return Block("Knots", tuple(found))
