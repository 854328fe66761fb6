"""The practice that a command reviews by: the shipped one, as the coach's house file changes it."""

from rigbuilder.plans.pulltests import with_own
from rigbuilder.reference.house import House, UnusableHouse
from rigbuilder.reference.load import Reference, load
from rigbuilder.review.houses import house_from
from rigbuilder.store.errors import CardError
from rigbuilder.store.house import read_house
from rigbuilder.store.paths import find_places
from rigbuilder.store.pulltests import NAME as PULL_TESTS
from rigbuilder.store.pulltests import PullTestFile


def practice() -> tuple[Reference, House]:
    """Return the reference as the house and own pull tests change it, and the house.

    Raises:
        StoreError: the house file or that of pull tests cannot be read, or says what means nothing here.
    """
    reference, path = load(), find_places().house
    try:
        house = house_from(read_house(path), reference)
    except UnusableHouse as trouble:
        first = trouble.problems[0]
        more = len(trouble.problems) - 1
        advice = "Mend the file, or remove it to return to the shipped practice."
        if more:
            advice = f"{more} more of the kind. {advice}"
        raise CardError(
            path,
            where=first.where,
            found=first.found,
            expected=first.expected.removeprefix("expected "),
            advice=advice,
        ) from None
    pulled = PullTestFile(find_places().data / PULL_TESTS, reference).load()
    return with_own(house.apply(reference), pulled), house
