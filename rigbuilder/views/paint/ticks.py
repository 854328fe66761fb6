"""Ticks that a person would choose, and numbers as a person writes them."""

from math import ceil, floor, isfinite, log10

from rigbuilder.views.paint.spec import Axis, Scale

_NICE = (1.0, 2.0, 2.5, 5.0, 10.0)


def nice_step(span: float, most: int) -> float:
    """Return the smallest step of 1, 2, 2.5 or 5 times a power of ten with at most ``most`` intervals."""
    if not isfinite(span) or span <= 0 or most < 1:
        raise ValueError(f"A step needs a positive span and at least one interval, not {span} and {most}.")
    raw = span / most
    power = 10.0 ** floor(log10(raw))
    return next(power * nice for nice in _NICE if power * nice >= raw * (1 - 1e-9))


def linear_ticks(low: float, high: float, most: int = 6) -> tuple[float, ...]:
    """Return round values from ``low`` to ``high``, both ends included where they are round."""
    step = nice_step(high - low, most)
    first, last = ceil(low / step - 1e-9), floor(high / step + 1e-9)
    return tuple(round(k * step, 12) for k in range(first, last + 1))


def log_ticks(low: float, high: float, most: int = 6) -> tuple[float, ...]:
    """Return 1-2-5 values between two positive bounds, thinned to whole decades if there are too many."""
    if low <= 0 or high <= low:
        raise ValueError(f"A logarithmic axis needs bounds above zero in order, not {low} and {high}.")
    decades = range(floor(log10(low)), ceil(log10(high)) + 1)
    for steps in ((1, 2, 3, 5, 7), (1, 2, 5), (1, 3), (1,)):
        ticks = [s * 10.0**d for d in decades for s in steps]
        inside = tuple(t for t in ticks if low * (1 - 1e-9) <= t <= high * (1 + 1e-9))
        if len(inside) <= most + 1:
            return inside
    every = ceil(len(inside) / most)
    return inside[::every]


def bounds(axis: Axis, values: list[float]) -> tuple[float, float]:
    """Return the ends of an axis: as given, else round values around the data.

    A linear axis starts at zero when the data lie near it, so that heights compare truly.
    """
    known = [value for value in values if isfinite(value)]
    if axis.scale is Scale.LOG:
        known = [value for value in known if value > 0]
    least = min(known, default=1.0 if axis.scale is Scale.LOG else 0.0)
    most = max(known, default=10.0)
    low = axis.low if axis.low is not None else least
    high = axis.high if axis.high is not None else most
    if axis.scale is Scale.LOG:
        return _log_bounds(axis, low, high)
    if high <= low:
        high = low + (abs(low) or 1.0)
    if axis.low is None and 0 < low < 0.6 * high:
        low = 0.0
    step = nice_step(high - low, 6)
    low = low if axis.low is not None else floor(low / step + 1e-9) * step
    high = high if axis.high is not None else ceil(high / step - 1e-9) * step
    return low, high


def _log_bounds(axis: Axis, low: float, high: float) -> tuple[float, float]:
    low = low if low > 0 else 1e-3
    high = high if high > low else low * 10
    if axis.low is None:
        low = max(t for t in _around(low) if t <= low * (1 + 1e-9))
    if axis.high is None:
        high = min(t for t in _around(high) if t >= high * (1 - 1e-9))
    return low, high


def _around(value: float) -> list[float]:
    decade = floor(log10(value))
    return [s * 10.0**d for d in (decade - 1, decade, decade + 1) for s in (1, 2, 5)]


def axis_ticks(axis: Axis, low: float, high: float, most: int = 6) -> tuple[float, ...]:
    """Return the ticks of an axis: its own where it has them, else round ones."""
    if axis.ticks:
        return tuple(tick for tick in axis.ticks if low <= tick <= high)
    if axis.scale is Scale.LOG:
        return log_ticks(low, high, most)
    return linear_ticks(low, high, most)


def number(value: float, step: float | None = None) -> str:
    """Return a number as written on an axis: no needless digits, a true minus sign.

    With ``step`` all ticks of one axis carry the same number of decimals.
    """
    if value == 0:
        return "0"
    if step is not None and step > 0:
        decimals = max(0, -floor(log10(step) + 1e-9))
        if round(step * 10**decimals, 6) != int(round(step * 10**decimals, 6)):
            decimals += 1
        text = f"{value:.{decimals}f}"
    else:
        text = f"{value:.3g}" if abs(value) < 1000 else f"{value:.0f}"
        if "e" in text:
            text = f"{value:.12f}".rstrip("0").rstrip(".") or "0"
    return text.replace("-", "\u2212")


def tick_texts(axis: Axis, ticks: tuple[float, ...]) -> tuple[str, ...]:
    """Return the words of all ticks of one axis."""
    if axis.scale is Scale.LOG or axis.ticks or len(ticks) < 2:
        return tuple(number(tick) for tick in ticks)
    step = ticks[1] - ticks[0]
    return tuple(number(tick, step) for tick in ticks)
