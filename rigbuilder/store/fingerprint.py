"""What a file was when it was read or written, to notice later that it changed."""

import hashlib
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Fingerprint:
    """Size, time and hash of a file; the hash decides, the others are for display and speed."""

    size: int
    mtime_ns: int
    sha256: str

    def same_content(self, other: "Fingerprint") -> bool:
        """Say whether both stand for the same bytes."""
        return self.sha256 == other.sha256


def digest(data: bytes) -> str:
    """Return the SHA-256 of ``data`` in hexadecimal."""
    return hashlib.sha256(data).hexdigest()
