"""Names for files that a person is asked about."""

from rigbuilder.store.names import slug


def suggested_name(title: str | None, suffix: str) -> str:
    """Return a file name made from the name of a card, safe on every system."""
    return slug(title or "rig") + suffix
