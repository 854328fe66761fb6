"""From field values in SI to the frozen rig: which value goes where."""

from collections.abc import Mapping
from typing import Any

from rigbuilder.model.assume import test_n
from rigbuilder.model.rig import (
    Backing,
    FillWish,
    Fish,
    Hardware,
    Knots,
    Leader,
    Line,
    LineSize,
    Lure,
    Reel,
    Rig,
    Spool,
    Water,
)
from rigbuilder.model.rods import rod_of
from rigbuilder.reference.words import Stand

Values = Mapping[str, Any]


def build(values: Values, extra: Mapping[str, Any], said: frozenset[str]) -> Rig:
    """Build the rig; ``extra`` holds price, silenced rules and log, already read.

    Raises:
        pydantic.ValidationError: if an invariant of the rig is broken.
    """
    shore = values.get("from")
    return Rig(
        name=values["name"],
        presentation=values["presentation"],
        lure=_lure(values),
        rod=rod_of(values),
        reel=_group(Reel, "reel", values, ("kind", "ratio", "size"),
                    retrieve_m="retrieve", drag_n="drag", capacity="capacity").with_(spool=_spool(values)),
        main=Line(**_line_values("main", values, extra)),
        backing=_backing(values, extra),
        leader=_leader(values, extra),
        knots=Knots(lure=values.get("knots.lure"), arbor=values.get("knots.arbor")),
        hardware=Hardware(swivel_n=values.get("hardware.swivel"), snap_n=values.get("hardware.snap")),
        drag_n=values.get("drag"),
        water=_group(Water, "water", values, ("kind", "cover", "pressure", "wind"),
                     temperature_c="temperature", clarity_m="clarity", depth_m="depth",
                     current_mps="current", air_c="air"),
        from_shore=None if shore is None else shore == Stand.SHORE,
        cast_m=values.get("cast"),
        fish=Fish(mass_kg=values.get("fish.weight"), teeth=values.get("fish.teeth")),
        fill=_fill(values, extra),
        silenced=extra.get("silenced", ()),
        log=extra.get("log", ()),
        said=said,
        pinned=extra.get("pinned", frozenset()),
    )  # fmt: skip


def _group(kind: Any, group: str, values: Values, same: tuple[str, ...], **renamed: str) -> Any:
    wanted = {name: name for name in same} | renamed
    found = {name: values.get(f"{group}.{key}") for name, key in wanted.items()}
    return kind(**{name: value for name, value in found.items() if value is not None})


def _lure(values: Values) -> Lure:
    return Lure(
        technique=values["lure.technique"],
        weight_kg=values["lure.weight"],
        trailer_kg=values.get("lure.trailer"),
        sinker_kg=values.get("lure.sinker"),
        hook=values.get("lure.hook"),
        buoyancy=values.get("lure.buoyancy"),
        depth_m=values.get("lure.depth"),
    )


def _line_values(group: str, values: Values, extra: Mapping[str, Any]) -> dict[str, Any]:
    test = values.get(f"{group}.test")
    return {
        "type": values[f"{group}.type"],
        "test_n": test_n(test),
        "size": test if isinstance(test, LineSize) else None,
        "diameter_m": values.get(f"{group}.diameter"),
        "length_m": values.get(f"{group}.length"),
        "condition": values.get(f"{group}.condition"),
        "convention": values.get(f"{group}.convention"),
        "measured_diameter_m": values.get(f"{group}.measured.diameter"),
        "measured_strength_n": values.get(f"{group}.measured.strength"),
        "price": extra.get(f"{group}.price"),
    }


def _leader(values: Values, extra: Mapping[str, Any]) -> Leader | None:
    if values.get("leader.type") is None:
        return None
    return Leader(**_line_values("leader", values, extra), knot=values.get("leader.knot"))


def _backing(values: Values, extra: Mapping[str, Any]) -> Backing | None:
    if values.get("backing.type") is None:
        return None
    return Backing(**_line_values("backing", values, extra), knot=values.get("backing.knot"))


def _spool(values: Values) -> Spool:
    return Spool(
        arbor_m=values.get("reel.spool.arbor"),
        rim_m=values.get("reel.spool.rim"),
        width_m=values.get("reel.spool.width"),
    )


def _fill(values: Values, extra: Mapping[str, Any]) -> FillWish:
    return FillWish(
        backing_m=values.get("fill.backing"),
        main_m=values.get("fill.main"),
        lip_gap_m=values.get("fill.lip_gap"),
        taped=extra.get("fill.taped", False),
        season_refills=extra.get("fill.season_refills"),
    )
