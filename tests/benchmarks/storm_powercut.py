"""Cut the power under a saving program, on file systems of its own, and count what was lost.

Run as an administrator: python -m tests.benchmarks.storm_powercut [CUTS] [FILE SYSTEM]

A file system lives in an image file mounted through a loop device. While a
program saves and reports, it is halted at random and the image copied: the
copy holds what had reached the disk, not what the system still had in memory.
Mounted, it must hold the last save reported before the halt, or a later one.
"""

import filecmp
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from rigbuilder.store import syscalls
from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.errors import StoreError
from rigbuilder.store.history import History


@dataclass(frozen=True)
class Disk:
    name: str
    make: tuple[str, ...]
    options: str
    size: int
    flush: bool = True


DISKS = [
    Disk("ext4", ("mkfs.ext4", "-q", "-F"), "loop", 24 << 20),
    Disk(
        "ext4, noauto_da_alloc, commit=1",
        ("mkfs.ext4", "-q", "-F"),
        "loop,noauto_da_alloc,commit=1",
        24 << 20,
    ),
    Disk("control: ext4, nothing flushed", ("mkfs.ext4", "-q", "-F"), "loop", 24 << 20, flush=False),
    Disk("xfs", ("mkfs.xfs", "-q", "-f"), "loop,nouuid", 320 << 20),  # nouuid: the copy is mounted beside it
]


def run(*command: str) -> None:
    subprocess.run(command, check=True, capture_output=True)


@contextmanager
def mounted(image: Path, where: Path, options: str) -> Iterator[Path]:
    where.mkdir(exist_ok=True)
    run("mount", "-o", options, str(image), str(where))
    try:
        yield where
    finally:
        run("umount", str(where))


def store_in(root: Path) -> CardStore:
    return CardStore(root / "cards", history=History(root / "history"), bin_=Bin(root / "bin"))


def save_for_ever(root: Path, pipe: int) -> None:
    store = store_in(root)
    card = {"format": "rigbuilder.card", "version": 1, "id": "storm", "name": "Storm", "n": 0}
    saved = store.create(card | {"notes": "x" * 20_000})
    os.write(pipe, (0).to_bytes(8, "little"))
    while True:
        document = saved.document | {"n": saved.document["n"] + 1}
        saved = store.save(document, saved.path, expected=saved.fingerprint)
        os.write(pipe, document["n"].to_bytes(8, "little"))


class Reports:
    """What the saving program has reported so far."""

    def __init__(self, pipe: int) -> None:
        os.set_blocking(pipe, False)
        self._pipe, self._data = pipe, b""

    def last(self) -> int | None:
        while True:
            try:
                piece = os.read(self._pipe, 65536)
            except BlockingIOError:
                break
            if not piece:
                break
            self._data += piece
        whole = len(self._data) // 8 * 8
        return int.from_bytes(self._data[whole - 8 : whole], "little") if whole else None


def snapshot(child: int, image: Path, copy: Path, reports: Reports) -> int | None:
    """Copy the image as it is at one instant; return the last save reported by then.

    The saving program is halted (between any two of its file calls), and the
    copy repeated while the system itself still writes to the image.
    """
    os.kill(child, signal.SIGSTOP)
    os.waitpid(child, os.WUNTRACED)
    try:
        acknowledged = reports.last()
        while True:
            shutil.copyfile(image, copy)
            if filecmp.cmp(image, copy, shallow=False):
                return acknowledged
    finally:
        filecmp.clear_cache()
        os.kill(child, signal.SIGCONT)


def cut(disk: Disk, work: Path, chance: random.Random, cuts: int) -> dict[str, int]:
    """Save on one disk and cut its power ``cuts`` times; return the counts."""
    counts = dict.fromkeys(("cuts", "saves", "lost", "torn"), 0)
    image, copy = work / "disk.img", work / "copy.img"
    with image.open("wb") as file:
        file.truncate(disk.size)
    run(*disk.make, str(image))
    with mounted(image, work / "disk", disk.options) as root:
        read, write = os.pipe()
        child = os.fork()
        if child == 0:
            os.close(read)
            if not disk.flush:
                syscalls.flush = lambda handle: None
            save_for_ever(root, write)
            os._exit(70)
        os.close(write)
        reports = Reports(read)
        try:
            while reports.last() is None:
                time.sleep(0.01)
            for _ in range(cuts):
                time.sleep(chance.uniform(0, 0.15))
                acknowledged = snapshot(child, image, copy, reports)
                counts["cuts"] += 1
                judge(copy, work / "copy", disk.options, acknowledged or 0, counts)
            counts["saves"] = reports.last() or 0
        finally:
            os.kill(child, 9)
            os.waitpid(child, 0)
            os.close(read)
    return counts


def judge(copy: Path, where: Path, options: str, acknowledged: int, counts: dict[str, int]) -> None:
    """Look at what a disk holds after the cut; one that cannot even be mounted counts as torn."""
    try:
        with mounted(copy, where, options) as root:
            store = store_in(root)
            cards = list(store.folder.glob("*.rigcard"))
            number = store.load(cards[0]).document["n"] if cards else -1
    except (StoreError, subprocess.CalledProcessError):
        counts["torn"] += 1
    else:
        counts["lost"] += number < acknowledged


def main() -> None:
    cuts = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    only = sys.argv[2] if len(sys.argv) > 2 else ""
    os.nice(10)
    bad = 0
    print(f"{'file system':<36}{'cuts':>6}{'saves':>9}{'lost':>6}{'torn':>6}")
    for disk in (disk for disk in DISKS if disk.name.startswith(only)):
        if os.geteuid() != 0 or shutil.which(disk.make[0]) is None or shutil.which("mount") is None:
            print(f"{disk.name:<36}skipped: needs an administrator and {disk.make[0]}")
            continue
        with tempfile.TemporaryDirectory() as name:
            try:
                counts = cut(disk, Path(name), random.Random(1), cuts)
            except subprocess.CalledProcessError as error:
                print(f"{disk.name:<36}skipped: {error.stderr.decode(errors='replace').strip()[:120]}")
                continue
        harm = counts["lost"] + counts["torn"]
        # Without flushing, cards must get lost: otherwise the cuts would show nothing.
        bad += harm if disk.flush else not harm
        print(
            f"{disk.name:<36}{counts['cuts']:>6}{counts['saves']:>9,}{counts['lost']:>6}{counts['torn']:>6}"
        )
    sys.exit(bool(bad))


if __name__ == "__main__":
    main()
