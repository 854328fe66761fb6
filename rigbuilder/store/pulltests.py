"""The person's own pull tests on the disk: one small file in the data folder, replaced as a whole."""

from collections.abc import Sequence
from pathlib import Path

from rigbuilder.model.pulltests import PullSeries, SeriesError, read_series
from rigbuilder.reference.load import Reference
from rigbuilder.store import atomic
from rigbuilder.store.cardfile import check_format
from rigbuilder.store.codec import CARD_LIMITS, decode, encode
from rigbuilder.store.errors import CardError, NewerVersion, NotFound
from rigbuilder.store.reading import read_file

FORMAT, VERSION = "rigbuilder.pulltests", 1
NAME = "pulltests.json"
MOST_SERIES = 1000


class PullTestFile:
    """The file of pull tests; where there is none, there are no tests."""

    def __init__(self, path: Path, reference: Reference) -> None:
        self.path = path
        self._reference = reference

    def load(self) -> tuple[PullSeries, ...]:
        """Return all series, in the order in which they were entered.

        Raises:
            StoreError: the file cannot be read; CardError: with the entry and field that make no sense.
        """
        try:
            data, _ = read_file(self.path, limit=CARD_LIMITS.size)
        except NotFound:
            return ()
        told = decode(data, self.path)
        check_format(told, self.path, FORMAT)
        version = told.get("version")
        if isinstance(version, int) and version > VERSION:
            raise NewerVersion(self.path, version=version, known=VERSION)
        entries = told.get("series")
        if not isinstance(entries, list) or len(entries) > MOST_SERIES:
            raise CardError(
                self.path, where="series", found="no list", expected=f"at most {MOST_SERIES} entries"
            )
        return tuple(self._series(entry, number) for number, entry in enumerate(entries, start=1))

    def save(self, series: Sequence[PullSeries]) -> atomic.Notes:
        """Write all series; return remarks, usually none.

        Raises:
            StoreError: they could not be written; the file is as it was.
        """
        atomic.make_folder(self.path.parent)
        entries = [one.as_entry() for one in series]
        return atomic.write(
            self.path, encode({"format": FORMAT, "version": VERSION, "series": entries}, CARD_LIMITS)
        )

    def _series(self, entry: object, number: int) -> PullSeries:
        try:
            return read_series(entry, self._reference)
        except SeriesError as error:
            where = f"series {number}, {error.field}"
            raise CardError(self.path, where=where, found=error.found, expected=error.expected) from None
