"""The chain of the rig on the bench as a person reads it: links, drag, joints with their knots."""

from dataclasses import dataclass

from PySide6.QtCore import QObject, Signal

from rigbuilder.plans.care import advice
from rigbuilder.plans.chain import ChainPlan, LinkPlan, chain_plan
from rigbuilder.plans.dragplan import DragPlan, drag_plan, drag_remarks
from rigbuilder.plans.fill import fill_plan
from rigbuilder.plans.fillsteps import Step
from rigbuilder.plans.joints import Candidate, Joint, joints
from rigbuilder.plans.known import Remark
from rigbuilder.plans.sheet import Sheet
from rigbuilder.reference.ranges import Range
from rigbuilder.review.case import Case
from rigbuilder.review.explain import distinct, source_words
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import Source
from rigbuilder.units.dimensions import Dimension
from rigbuilder.units.systems import in_system
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.viewmodels.reasons import capital


@dataclass(frozen=True, slots=True)
class LinkShown:
    """One link in the chosen unit, with its words; ``is_fuse`` marks the one that goes first."""

    label: str
    low: float
    typical: float
    high: float
    text: str
    is_fuse: bool


@dataclass(frozen=True, slots=True)
class KnotShown:
    """One knot for a joint: its name, what it bears, the reason for or against it, how to tie it."""

    name: str
    text: str
    reason: str
    suits: bool
    steps: tuple[Step, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class JointShown:
    """One joint with its knots, the proposed one first; ``path`` is its place on the card, if it has one."""

    title: str
    path: str
    ratio: str
    present: str
    proposed: str
    knots: tuple[KnotShown, ...]


@dataclass(frozen=True, slots=True)
class ChainShown:
    """Everything that the pane of the chain shows; forces in ``unit``."""

    unit: str
    links: tuple[LinkShown, ...]
    limits: tuple[tuple[str, float], ...]
    verdict: Remark
    lost: Sheet
    drag: Sheet
    drag_remarks: tuple[Remark, ...]
    joints: tuple[JointShown, ...]
    care: tuple[str, ...]
    sources: tuple[str, ...]


class ChainModel(QObject):
    """The chain, worked out when it is asked for."""

    changed = Signal()

    def __init__(self, bench: Bench, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self._shown: ChainShown | None = None
        bench.report_changed.connect(self._forget)
        bench.units_changed.connect(self._forget)

    def shown(self) -> ChainShown | None:
        """Return the chain of the present rig, ``None`` while the card cannot be read."""
        report = self.bench.report
        if self._shown is None and report is not None:
            self._shown = _shown(report.case, self.bench.speaker)
        return self._shown

    def tie(self, path: str, knot: str) -> None:
        """Put a knot on the card, as one undoable step."""
        group = path.partition(".")[0]
        along = {
            entry.field: entry.value
            for entry in self.bench.reading.assumed
            if entry.field.startswith(f"{group}.") and group in ("leader", "backing")
            and entry.field not in ("backing.length", path)
        }  # fmt: skip
        self.bench.edit(path, knot, along={} if self.bench.says(group) else along)
        self.bench.settle()

    def _forget(self, *_: object) -> None:
        self._shown = None
        self.changed.emit()


def _shown(case: Case, speaker: Speaker) -> ChainShown:
    chain = chain_plan(case, speaker)
    drag = drag_plan(case, fill_plan(case))
    _, unit = in_system(1.0, Dimension.FORCE, speaker.system, kind="drag")
    known = (chain.whole, drag.straight, drag.over_rod, chain.rod, chain.reel)
    sources = [source for one in known for source in one.sources]
    return ChainShown(
        unit=unit,
        links=tuple(_link(one, one is chain.fuse, speaker) for one in chain.links),
        limits=(
            ("drag over the rod", _in(drag.over_rod.value.typical, speaker)),
            ("most that the reel gives", _in(chain.reel.value.typical, speaker)),
        ),
        verdict=chain.verdict,
        lost=_lost(chain),
        drag=_drag(drag, speaker),
        drag_remarks=drag_remarks(drag, speaker),
        joints=tuple(_joint(one, speaker) for one in joints(case, speaker)),
        care=tuple(f"{capital(one.line)}: {one.text}" for one in advice(case.rig, case.reference)),
        sources=_words(sources),
    )


def _in(force_n: float, speaker: Speaker) -> float:
    return in_system(force_n, Dimension.FORCE, speaker.system, kind="drag")[0]


def _link(one: LinkPlan, fuse: bool, speaker: Speaker) -> LinkShown:
    low, typical, high = (_in(value, speaker) for value in one.link.strength_n)
    text = f"{speaker.forces(one.link.strength_n)}, first in {_chance(one)}"
    return LinkShown(capital(one.title), low, typical, high, text, fuse)


def _chance(one: LinkPlan) -> str:
    percent = 100 * one.link.goes_first
    return "less than 1 %" if percent < 1 else f"{percent:.0f} %"


def _lost(plan: ChainPlan) -> Sheet:
    rows = tuple((capital(one.title), _chance(one), one.lost) for one in plan.links)
    return Sheet("What goes with each link", ("link", "goes first", "what is lost"), rows)


def _drag(plan: DragPlan, speaker: Speaker) -> Sheet:
    def force(value: Range) -> str:
        return speaker.spread(value, Dimension.FORCE, "drag")

    shown = (plan.straight, plan.over_rod, plan.ceiling, plan.rod, plan.reel)
    rows = [(capital(one.label), force(one.value)) for one in shown]
    rows += [
        (f"With {speaker.line(point.out_m)} out, over the rod", force(point.at_fish_n))
        for point in plan.emptied
        if point.out_m > 0.0
    ]
    return Sheet("What drag?", ("what", "pull"), tuple(rows))


def _joint(joint: Joint, speaker: Speaker) -> JointShown:
    ratio = (
        "" if joint.ratio is None else f"one line is {joint.ratio.typical:.1f} times as thick as the other"
    )
    return JointShown(
        title=capital(joint.title),
        path=joint.path,
        ratio=ratio,
        present=joint.present or "",
        proposed=joint.proposed.knot.name if joint.proposed else "",
        knots=tuple(_knot(one, speaker) for one in joint.candidates),
    )


def _knot(one: Candidate, speaker: Speaker) -> KnotShown:
    mark = "" if one.suits else " · not here"
    text = f"{one.knot.name} · {speaker.forces(one.strength_n)}{mark}"
    steps = tuple(Step(f"Step {number}", step) for number, step in enumerate(one.knot.steps, start=1))
    turns = f"Turns: {one.knot.turns}. " if one.knot.turns and one.knot.turns != "none" else ""
    reason = f"{capital(one.reason)}. {turns}{one.knot.note}".strip()
    return KnotShown(one.knot.name, text, reason, one.suits, steps, _words(one.sources))


def _words(sources: tuple[Source, ...] | list[Source]) -> tuple[str, ...]:
    return tuple(capital(source_words(source)) for source in distinct(sources))
