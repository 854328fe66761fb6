"""Measures what one edit costs until the picture stands: scene, drawing, and each question's answer.

Use: ``python -m tests.benchmarks.bench_repaint``. The budget is 33 ms (median) for edit and drawing, and
50 ms for any one answer, which is worked out when the typing rests.
"""

import os
import statistics
import sys
import time
from collections.abc import Callable
from functools import partial

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication

from rigbuilder.model.usual import usual_document
from rigbuilder.reference.house import House
from rigbuilder.reference.load import load
from rigbuilder.review.engine import Report
from rigbuilder.viewmodels.answers import QUESTIONS, answer_shown
from rigbuilder.viewmodels.bench import Bench
from rigbuilder.views.rigdrawing import DrawingPanel
from rigbuilder.views.theme_look import Look, Mode

TECHNIQUES = ("frog", "deep-diver", "drop-shot", "punching")
ROUNDS = 25
FRAME_MS, ANSWER_MS = 33.0, 50.0


def median_ms(work: Callable[[int], object], rounds: int = ROUNDS) -> float:
    """Return the median time of a piece of work in milliseconds."""
    times = []
    for k in range(rounds):
        start = time.perf_counter()
        work(k)
        times.append(1e3 * (time.perf_counter() - start))
    return statistics.median(times)


def answers_over(bench: Bench) -> bool:
    """Print what each answer costs; return whether one is over its budget."""
    report, over = bench.report, False
    assert report is not None
    for question in QUESTIONS:
        spent = median_ms(partial(_answer, question, report, bench), 7)
        over |= spent > ANSWER_MS
        print(f"             {question:24s} {spent:6.1f} ms (budget {ANSWER_MS:g})")
    return over


def _answer(question: str, report: Report, bench: Bench, _: int) -> object:
    return answer_shown(question, report, bench.speaker)


def main() -> int:
    """Print the medians; return 1 if one is over its budget."""
    application = QApplication(sys.argv[:1])
    look = Look(application, mode=Mode.LIGHT)
    over = False
    for technique in TECHNIQUES:
        bench = Bench(usual_document(technique), load(), House.shipped())
        panel = DrawingPanel(bench, look)
        panel.resize(700, 340)
        panel.grab()

        def edit(k: int, bench: Bench = bench, panel: DrawingPanel = panel) -> None:
            bench.edit("cast", f"{10 + k % 7} m")
            panel.grab()

        frame = median_ms(edit)
        over |= frame > FRAME_MS
        print(f"{technique:12s} edit, review and drawing {frame:6.1f} ms (budget {FRAME_MS:g})")
        over |= answers_over(bench)
    return int(over)


if __name__ == "__main__":
    sys.exit(main())
