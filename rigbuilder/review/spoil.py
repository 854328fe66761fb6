"""From a right rig the same rig with one thing wrong: lessons and tests are made of it."""

import random
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from rigbuilder.model.document import Document, put_all
from rigbuilder.model.reading import read
from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.review import spoilers as by
from rigbuilder.review.core import Rule, Severity
from rigbuilder.review.engine import Report, lay_out, report
from rigbuilder.review.rules.book import RULES

_MOST = 40  # proposals that are tried together

FAMILIES: Mapping[str, tuple[by.Family, ...]] = {
    "lure-cracks-off": (by.heavy_lures,),
    "lure-heavier-than-rod": (by.lures, by.rods),
    "lure-lighter-than-rod": (by.lures, by.rods),
    "hook-size-unusual": (by.lures,),
    "hook-wire-does-not-fit": (by.lures,),
    "sinking-line-on-surface-lure": (by.other_types,),
    "line-wrong-for-technique": (by.other_types,),
    "line-cannot-cut-grass": (by.waters, by.other_types),
    "braid-in-wood": (by.waters, by.other_types),
    "bare-braid-in-clear-water": (by.waters,),
    "day-favours-another-line": (by.waters, by.other_types),
    "braid-in-frost": (by.frosts,),
    "stiff-line-in-cold-water": (by.waters,),
    "line-kinked": (by.conditions_of_line,),
    "line-worn": (by.conditions_of_line,),
    "leader-worn": (by.conditions_of_line,),
    "line-past-its-time": (by.logs,),
    "damage-not-cut-back": (by.logs,),
    "leader-used-up": (by.logs,),
    "label-does-not-add-up": (by.odd_diameter,),
    "test-below-practice": (by.other_tests,),
    "test-above-practice": (by.other_tests,),
    "test-off-the-aim": (by.other_tests, by.waters),
    "rod-too-soft-for-hook": (by.rods,),
    "rod-power-unusual": (by.rods,),
    "rod-action-unusual": (by.rods,),
    "rod-label-odd": (by.rods,),
    "test-below-rod": (by.rods, by.other_tests),
    "test-above-rod": (by.rods, by.other_tests),
    "braid-far-above-nylon-label": (by.rods, by.other_tests),
    "nothing-gives-on-small-trebles": (by.stiff_rod_on_braid,),
    "line-stretches-too-far-out": (by.other_types, by.waters),
    "line-stretches-in-deep-water": (by.waters,),
    "leader-stronger-than-main": (by.leaders,),
    "leader-outgrows-braid": (by.leaders,),
    "leader-as-strong-as-main": (by.leaders,),
    "leader-outside-practice": (by.leaders,),
    "leader-missing": (by.leaders,),
    "no-bite-leader": (by.waters, by.leaders),
    "leader-knot-in-the-weed": (by.leaders,),
    "wire-without-teeth": (by.leaders,),
    "leader-material-unusual": (by.leaders,),
    "leader-length-unusual": (by.leaders,),
    "leader-off-the-aim": (by.waters,),
    "leader-sinks-surface-lure": (by.leaders,),
    "leader-too-short-for-rock": (by.waters,),
    "hook-knot-on-a-lure": (by.lure_knots,),
    "lure-knot-wrong-for-line": (by.lure_knots,),
    "loop-knot-over-large-trebles": (by.lure_knots,),
    "joint-wrong-for-lines": (by.joints,),
    "joint-passes-guides": (by.joints,),
    "backing-joint-wrong": (by.joints, by.fillings),
    "hardware-too-big": (by.hardware,),
    "no-swivel-on-spinning-lure": (by.hardware,),
    "snap-swivel-not-needed": (by.hardware,),
    "hardware-weaker-than-line": (by.hardware,),
    "line-too-stiff-for-spinning-reel": (by.reels,),
    "line-too-thin-for-casting-reel": (by.reels, by.other_tests),
    "thin-braid-under-big-lure": (by.other_tests, by.heavy_lures),
    "springy-line-on-small-casting-reel": (by.reels, by.other_types),
    "reel-kind-unusual": (by.reels,),
    "gear-ratio-unusual": (by.reels,),
    "lure-too-light-for-casting-reel": (by.lures, by.reels),
    "spool-half-empty": (by.fillings,),
    "lead-core-as-backing": (by.fillings,),
    "braid-on-bare-arbor": (by.fillings,),
    "backing-joint-inside-cast": (by.fillings,),
    "too-little-line": (by.fillings,),
    "line-does-not-fit-spool": (by.fillings,),
    "drag-above-weakest-link": (by.drags,),
    "drag-opens-hooks": (by.drags,),
    "drag-above-practice": (by.drags,),
    "drag-too-loose": (by.drags,),
    "drag-strains-rod": (by.drags, by.rods),
    "drag-above-reel": (by.drags,),
    "fish-too-heavy-to-lift": (by.waters,),
    "presentation-does-not-fit": (by.waters,),
    "silencing-without-effect": (by.silencings,),
}
"""Which families of changes may cause a rule to speak."""


@dataclass(frozen=True, slots=True)
class Spoilt:
    """A spoilt card: what was changed on the usual rig, and what the review says of it now."""

    rule: Rule
    changes: Mapping[str, Any]
    document: Document
    report: Report


def spoil(technique: str, rule: str, seed: int, reference: Reference, house: House) -> Spoilt | None:
    """Return the usual rig of a technique (by id) spoilt so that ``rule`` speaks; the same for the same seed.

    No fault of another rule comes up, and as few risks as can be. ``None``
    where no change of the card makes the rule speak on this technique.

    Raises:
        KeyError: if there is no such rule or technique.
    """
    meant = {known.name: known for known in RULES}[rule]
    document = usual_document(reference.techniques[technique].id)
    reading = read(document, reference)
    if reading.rig is None:
        return None
    before = report(lay_out([reading.rig], reference, house)[0])
    if any(finding.rule is meant for finding in before.findings):
        return None
    order = random.Random(f"{technique}/{rule}/{seed}")  # noqa: S311 - a choice of examples, no secret
    proposals = _proposals(meant, before)
    order.shuffle(proposals)
    for start in range(0, len(proposals), _MOST):
        trials = _tried(document, proposals[start : start + _MOST], reference, house)
        good = [trial for trial in trials if _fits(trial[1], before, meant)]
        if good:
            changes, after = min(good, key=lambda trial: _noise(trial[1], meant))
            return Spoilt(meant, changes, put_all(document, changes), after)
    return None


def _proposals(meant: Rule, before: Report) -> list[Mapping[str, Any]]:
    found: list[Mapping[str, Any]] = [example.changes for example in meant.wrong if example.changes]
    for family in FAMILIES[meant.name]:
        found += family(before.case)
    return found


def _tried(
    document: Document, proposals: list[Mapping[str, Any]], reference: Reference, house: House
) -> Iterable[tuple[Mapping[str, Any], Report]]:
    readings = [(changes, read(put_all(document, changes), reference).rig) for changes in proposals]
    whole = [(changes, rig) for changes, rig in readings if rig is not None]
    if not whole:
        return []
    cases = lay_out([rig for _, rig in whole], reference, house)
    return [(changes, report(case)) for (changes, _), case in zip(whole, cases, strict=True)]


def _fits(after: Report, before: Report, meant: Rule) -> bool:
    known = {finding.rule.name for finding in before.findings}
    others = [
        finding for finding in after.findings if finding.rule is not meant and finding.rule.name not in known
    ]
    spoke = any(finding.rule is meant for finding in after.findings)
    return spoke and all(finding.severity < Severity.FAULT for finding in others)


def _noise(after: Report, meant: Rule) -> tuple[int, int]:
    others = [finding.severity for finding in after.findings if finding.rule is not meant]
    return sum(step is Severity.RISK for step in others), len(others)
