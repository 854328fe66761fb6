"""Two programs save one card a thousand times each; no update may be lost without a question.

Run: python -m tests.benchmarks.storm_writers [SAVES]
"""

import os
import random
import sys
import tempfile
import time
from pathlib import Path

from rigbuilder.store.bin import Bin
from rigbuilder.store.cards import CardStore
from rigbuilder.store.errors import ChangedOnDisk
from rigbuilder.store.history import History


def store_in(root: Path) -> CardStore:
    return CardStore(root / "cards", history=History(root / "history"), bin_=Bin(root / "bin"))


def write(store: CardStore, path: Path, who: str, saves: int) -> int:
    """Raise this writer's count ``saves`` times; return how often it was asked."""
    asked, chance = 0, random.Random(who)
    loaded = store.load(path)
    document, fingerprint = loaded.document, loaded.fingerprint
    for _ in range(saves):
        time.sleep(chance.uniform(0, 0.004))  # or the one that holds the turn would take it again each time
        while True:
            try:
                saved = store.save(document | {who: document[who] + 1}, path, expected=fingerprint)
            except ChangedOnDisk:
                asked += 1
                loaded = store.load(path)
                document, fingerprint = loaded.document, loaded.fingerprint
            else:
                document, fingerprint = saved.document, saved.fingerprint
                break
    return asked


def main() -> None:
    saves = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    os.nice(10)
    start = time.time()
    with tempfile.TemporaryDirectory() as name:
        store = store_in(Path(name))
        card = {"format": "rigbuilder.card", "version": 1, "name": "Two rods", "one": 0, "two": 0}
        path = store.create(card).path
        children = {}
        for who in ("one", "two"):
            child = os.fork()
            if child == 0:
                print(f"writer {who}: asked {write(store, path, who, saves):,} times", flush=True)
                os._exit(0)
            children[child] = who
        failed = [who for child, who in children.items() if os.waitpid(child, 0)[1] != 0]
        document = store.load(path).document
        lost = 2 * saves - document["one"] - document["two"]
        left = [path.name for path in store.folder.iterdir() if path.suffix != ".rigcard"]
    seconds = time.time() - start
    print(
        f"2 × {saves:,} saves in {seconds:.0f} s: {lost} lost, {len(failed)} writers failed, {len(left)} left"
    )
    sys.exit(bool(lost or failed or left))


if __name__ == "__main__":
    main()
