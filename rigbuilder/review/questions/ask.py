"""All questions by name."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from rigbuilder.review.case import Case
from rigbuilder.review.questions.answer import Answer, Question
from rigbuilder.review.questions.breaks import breaks
from rigbuilder.review.questions.cast import cast
from rigbuilder.review.questions.depth import depth
from rigbuilder.review.questions.feel import feel
from rigbuilder.review.questions.hook import hook
from rigbuilder.review.questions.sight import sight
from rigbuilder.review.questions.spool import spool

ASK: Mapping[Question, Callable[[Case, Case | None], Answer]] = MappingProxyType(
    {
        Question.BREAKS: breaks,
        Question.HOOK: hook,
        Question.DEPTH: depth,
        Question.SPOOL: spool,
        Question.CAST: cast,
        Question.SIGHT: sight,
        Question.FEEL: feel,
    }
)


def ask(question: Question, case: Case, preview: Case | None = None) -> Answer:
    """Return the answer to a question about a rig, held against a previewed rig where there is one."""
    return ASK[question](case, preview)
