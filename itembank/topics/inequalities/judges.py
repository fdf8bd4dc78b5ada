"""Who judges a problem: the judge of parts that hold together, or where one of them is enough?"""

from __future__ import annotations

from itembank.topics.inequalities.either import EitherJudge
from itembank.topics.inequalities.judging import InequalityJudge
from itembank.topics.inequalities.problems import Problem, is_either

InequalitiesJudge = InequalityJudge | EitherJudge


def judge_of(problem: Problem) -> InequalitiesJudge:
    """The judge of a problem as read."""
    if is_either(problem.relation):
        return EitherJudge(problem.relation, problem.unknown)
    return InequalityJudge(*problem)
