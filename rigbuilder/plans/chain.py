"""Where will it break: every link from hook to reel, what is lost if it goes, and where the fuse is."""

from dataclasses import dataclass

from rigbuilder.model.fields import Part
from rigbuilder.plans.known import Known, Remark
from rigbuilder.reference.ranges import Range
from rigbuilder.reference.words import HookClass
from rigbuilder.review.case import Case
from rigbuilder.review.facts import Link
from rigbuilder.review.figuring.working import working
from rigbuilder.review.hook_wire import bears_like
from rigbuilder.review.speak import Speaker
from rigbuilder.sources import FROM_MEMORY, Kind, Source

CLEAR = 0.5  # from this chance on a link is the fuse [1], from memory

# Where practice wants the fuse: little line is left behind. The hook counts too, it gives without a break.
_PLANNED = ("hook", "split ring", "knot at the lure", "leader")


@dataclass(frozen=True, slots=True)
class LinkPlan:
    """One link: what it bears, how likely it goes first, how its strength is known, what goes with it."""

    link: Link
    sources: tuple[Source, ...]
    lost: str

    @property
    def title(self) -> str:
        """Return the link's name, with the knot's where it is one."""
        return self.link.name


@dataclass(frozen=True, slots=True)
class ChainPlan:
    """The chain: its links from the hook upwards, limits of rod and reel, and a word on the fuse."""

    links: tuple[LinkPlan, ...]
    whole: Known
    rod: Known
    reel: Known
    fuse: LinkPlan
    verdict: Remark


def chain_plan(case: Case, speaker: Speaker) -> ChainPlan:
    """Return the chain of a rig and whether its fuse is where it should be."""
    facts = case.facts
    links = tuple(LinkPlan(link, _sources(link, case), _lost(link, case, speaker)) for link in facts.links)
    fuse = max(links, key=lambda one: one.link.goes_first)
    return ChainPlan(
        links=links,
        whole=_known("chain_n", facts.chain_n, case),
        rod=_known("rod_limit_n", facts.rod_limit_n, case),
        reel=_known("reel_limit_n", facts.reel_limit_n, case),
        fuse=fuse,
        verdict=_verdict(links, fuse, case, speaker),
    )


def _known(name: str, value: Range, case: Case) -> Known:
    row = working(name, case.facts)
    inputs = tuple((one.label, one.value) for one in row.inputs if one.value is not None)
    return Known(name, row.label, value, row.unit, row.formula, inputs, row.sources)


def _sources(link: Link, case: Case) -> tuple[Source, ...]:
    if link.name == "hook":
        return case.reference.hooks[bears_like(case.hook, case.rig.lure.hook)].sources
    if link.name == "split ring":
        return case.reference.hooks[case.hook].sources
    knot = _knot_of(link, case)
    if knot is not None:
        row = case.reference.knots.get(knot)
        return row.sources if row is not None else (FROM_MEMORY,)
    if link.name in ("leader", "main line"):
        line = case.main if link.part is Part.MAIN else case.end
        if line.measured_strength_n is not None:
            return (Source(Kind.MEMORY, "measured at the bench, to about 7 %"),)
        return (Source(Kind.MEMORY, "label, its honesty, wetness and wear, from the table of line types"),)
    return (FROM_MEMORY,)


def _knot_of(link: Link, case: Case) -> str | None:
    if link.name == "knot at the lure":
        return case.rig.knots.lure
    if link.name == "joint of leader and main line" and case.leader is not None:
        return case.leader.knot
    return None


def _lost(link: Link, case: Case, speaker: Speaker) -> str:
    leader = case.leader.length_m if case.leader is not None and case.leader.length_m else 0.0
    whole = f"the lure and the whole leader, {speaker.leader(leader)}" if leader else "the lure"
    left = f"up to {speaker.line(case.rig.cast_m or case.technique.distance_m.middle)} of main line"
    words = {
        "hook": "the fish; the lure comes back with its hook bent open",
        "knot at the lure": "the lure; a hooked fish carries it, with hardly any line",
        "split ring": "the fish, with one treble in its mouth; the lure comes back with a ring drawn open",
        "snap": "the lure; the snap comes back open",
        "leader": f"the lure and a part of the leader, up to {speaker.leader(leader)}",
        "joint of leader and main line": f"{whole}",
        "swivel": f"{whole}",
        "main line": f"{whole}, and {left}, which stays in the water and snares birds",
    }
    return words[link.name]


def _verdict(links: tuple[LinkPlan, ...], fuse: LinkPlan, case: Case, speaker: Speaker) -> Remark:
    main = next((one for one in links if one.link.name == "main line"), None)
    if main is not None and main.link.goes_first >= CLEAR:
        words = (
            f"The main line itself goes first. What goes is {fuse.lost}. A lighter leader, or a weaker "
            "end knot, makes a better fuse."
        )
        return Remark("risk", words)
    if fuse.link.name in _PLANNED:
        return Remark("right", _planned(fuse, case))
    if _bite_leader(case):
        words = (
            "The leader is stronger than the main line on purpose, so the joint is the fuse: tie it well, "
            "and fish barbless hooks, for a lost fish drags the whole leader."
        )
        return Remark("note", words)
    if fuse.link.goes_first < CLEAR:
        return Remark("note", f"No link stands out as the fuse; the {fuse.title} goes first most often.")
    words = f"The {fuse.title} goes first, and takes {fuse.lost}. Better that the knot at the lure went."
    return Remark("note", words)


def _planned(fuse: LinkPlan, case: Case) -> str:
    if fuse.link.name == "hook":
        wire = {
            HookClass.LIGHT_TREBLE: "fine trebles open",
            HookClass.LIGHT_WIRE_SINGLE: "its fine wire opens",
        }.get(bears_like(case.hook, case.rig.lure.hook), "it opens or tears out")
        return f"The hook is the fuse: {wire} before anything breaks. Keep the drag below it."
    if fuse.link.name == "split ring":
        return "The split ring is the fuse: it opens before the line breaks. Fit rings one size up."
    return f"The {fuse.title} is the fuse, as it should be. What goes is {fuse.lost}."


def _bite_leader(case: Case) -> bool:
    leader = case.leader
    return leader is not None and (leader.test_n or 0.0) > case.main_n
