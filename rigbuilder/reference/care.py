"""Drag, filling, renewing, and what is assumed of the water."""

from rigbuilder.reference.ranges import RangeField, SpanField
from rigbuilder.reference.rows import Frozen, Row
from rigbuilder.reference.texts import NamedRule
from rigbuilder.reference.words import Cover, Pressure, WaterKind, Wind


class DragShare(Row):
    """The drag as per cent of the weakest label, for one kind of line or fishing."""

    id: str
    percent: SpanField


class DragLimits(Row):
    """The figures that drag is judged by."""

    reel_share_smooth: float
    cast_shock_warn_oz: float
    cast_shock_lb_per_oz: RangeField


class DragTable(Frozen):
    """Everything on drag and on where rigs break."""

    shares: tuple[DragShare, ...]
    limits: DragLimits
    rules: tuple[NamedRule, ...]
    weak_links: tuple[NamedRule, ...]

    def share(self, share_id: str) -> DragShare:
        """Return the share of one kind of line or fishing."""
        return next(share for share in self.shares if share.id == share_id)


class FillingLimits(Row):
    """The figures that a spool's filling is judged by."""

    lip_gap_spinning_m: SpanField
    lip_gap_casting_m: SpanField
    backing_cast_factor: float
    backing_margin_m: float
    trimming_m: SpanField
    wind_tension_single_strand_n: SpanField
    wind_tension_braid_share: float
    wind_tension_braid_max_n: float


class FillingTable(Frozen):
    """Everything on filling a spool."""

    limits: FillingLimits
    rules: tuple[NamedRule, ...]


class Respool(Row):
    """When to renew one line: for a weekend angler, in heavy use, and by what signs."""

    line: str
    weekend: str
    heavy: str
    max_months: int
    max_outings: int
    signs: str


class WaterDefaults(Row):
    """What is assumed of the water until it is said."""

    water_kind: WaterKind
    temperature_c: float
    clarity_m: float
    depth_m: float
    current_m_s: float
    cover: Cover
    pressure: Pressure
    wind: Wind
    air_c: float


class ClarityWord(Row):
    """A word for clarity as visibility [m]."""

    id: str
    visibility_m: RangeField


class WindWord(Row):
    """A word for wind as speed [m/s]."""

    id: Wind
    speed_m_s: RangeField


class SaltWord(Row):
    """A kind of water as salinity [g/kg]."""

    id: WaterKind
    salinity_g_kg: RangeField


class WaterTable(Frozen):
    """What is assumed of the water, and what its words mean."""

    defaults: WaterDefaults
    clarity: tuple[ClarityWord, ...]
    wind: tuple[WindWord, ...]
    salt: tuple[SaltWord, ...]
