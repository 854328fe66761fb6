"""What a chart shows, as frozen data: painting, tables and exports all read this and nothing else."""

from dataclasses import dataclass
from enum import StrEnum

Point = tuple[float, float]
Band = tuple[float, float, float]  # x, low, high


class Scale(StrEnum):
    """How an axis is divided."""

    LINEAR = "linear"
    LOG = "log"


@dataclass(frozen=True, slots=True)
class Axis:
    """One axis in the units shown; ``low``/``high`` and ``ticks`` only where the data should not decide."""

    label: str
    unit: str = ""
    scale: Scale = Scale.LINEAR
    low: float | None = None
    high: float | None = None
    ticks: tuple[float, ...] = ()
    downwards: bool = False  # a y axis whose low end lies on top, for depths

    @property
    def title(self) -> str:
        """Label and unit as written beside the axis."""
        return f"{self.label} [{self.unit}]" if self.unit else self.label


@dataclass(frozen=True, slots=True)
class Series:
    """One curve: typical values as points, low and high as a band; ``role`` names a stroke of the theme."""

    label: str
    points: tuple[Point, ...]
    role: str = "present"
    band: tuple[Band, ...] = ()
    strong: bool = False  # the line that the question is about
    markers: bool = False


@dataclass(frozen=True, slots=True)
class Limit:
    """A line across the plot at one value of an axis, with its words."""

    value: float
    label: str
    axis: str = "y"
    severity: str = ""  # fault, risk, note, right; plain ink if empty


@dataclass(frozen=True, slots=True)
class Mark:
    """One marked point with its words."""

    x: float
    y: float
    label: str
    severity: str = ""


@dataclass(frozen=True, slots=True)
class ChartSpec:
    """One chart: a question for a title, the sentence that answers it, the curves behind it."""

    title: str
    x: Axis
    y: Axis
    series: tuple[Series, ...]
    limits: tuple[Limit, ...] = ()
    marks: tuple[Mark, ...] = ()
    answer: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Bar:
    """One row: low, typical and high in the unit of the axis; ``text`` stands at its end."""

    label: str
    low: float
    typical: float
    high: float
    role: str = "present"
    text: str = ""
    strong: bool = False


@dataclass(frozen=True, slots=True)
class BarSpec:
    """Rows of bars, along the chain from rod to hook for instance, with the range as a whisker."""

    title: str
    axis: Axis
    bars: tuple[Bar, ...]
    limits: tuple[Limit, ...] = ()
    answer: str = ""
    note: str = ""
