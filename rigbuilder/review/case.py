"""One rig laid out for the rules: the rig, what practice says of its technique, and its figures."""

from dataclasses import dataclass

from rigbuilder.model.rig import Leader, Line, Rig
from rigbuilder.reference.house import House
from rigbuilder.reference.load import Reference
from rigbuilder.reference.ranges import LBF_N, Span
from rigbuilder.reference.techniques import LinePractice, Technique
from rigbuilder.reference.words import HookClass, LineType
from rigbuilder.review.conditions import Aim
from rigbuilder.review.facts import Facts

# Common practice: a PE number is sold as 10 lb, by some as up to 17.
PE_LB = (10.0, 17.0)


@dataclass(frozen=True, slots=True)
class Case:
    """Everything that a rule may look at. Rules read; they never compute mechanics of their own.

    ``shipped`` tells that the house overrides nothing.
    """

    rig: Rig
    technique: Technique
    reference: Reference
    house: House
    aim: Aim
    facts: Facts
    shipped: bool

    @property
    def main(self) -> Line:
        """Return the main line."""
        return self.rig.main

    @property
    def leader(self) -> Leader | None:
        """Return the leader, if there is one."""
        return self.rig.leader

    @property
    def end(self) -> Line:
        """Return the line that is tied to the lure: the leader, or the main line without one."""
        return self.rig.leader or self.rig.main

    @property
    def main_n(self) -> float:
        """Return the printed strength of the main line [N]; a card without one cannot be read."""
        return self.rig.main.test_n or 0.0

    @property
    def main_reach_n(self) -> Span:
        """Return the printed strengths that the main line may be sold as [N].

        A braid's size number stands for a range of tests, so what rests on its test is
        judged by the end that speaks for it; a printed test stands for itself.
        """
        size = self.rig.main.size
        if size is None or size.scale != "PE":
            return Span(self.main_n, self.main_n)
        return Span(*(size.number * pounds * LBF_N for pounds in PE_LB))

    @property
    def practice(self) -> LinePractice | None:
        """Return what practice says of this line type for this technique."""
        return self.technique.lines.get(self.rig.main.type)

    @property
    def hook(self) -> HookClass:
        """Return the class of hook that the technique fishes."""
        return self.technique.hook_class

    @property
    def weakest_label_n(self) -> float:
        """Return the smallest printed strength between reel and lure [N]."""
        lines = [self.main_n] + ([self.leader.test_n] if self.leader and self.leader.test_n else [])
        return min(lines)

    def is_braided(self) -> bool:
        """Tell whether the main line is gel-spun polyethylene."""
        return self.rig.main.type.is_braided

    def is_type(self, *types: LineType) -> bool:
        """Tell whether the main line is one of these types."""
        return self.rig.main.type in types
