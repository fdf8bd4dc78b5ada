"""Does each common error of quadratic equations lead where it says, and where it is told to?"""

from __future__ import annotations

from random import Random

import pytest

from itembank.algebra.joining import joined
from itembank.algebra.reading import read_line
from itembank.algebra.values import NoValue
from itembank.topics import find_topic
from itembank.topics.catalogue import CommonError
from itembank.topics.kinds import Family
from itembank.topics.quadratic_equations.errors import changes
from itembank.topics.quadratic_equations.families import FAMILIES
from itembank.topics.quadratic_equations.forms import form_of
from itembank.topics.quadratic_equations.topic import QUADRATIC_EQUATIONS


@pytest.mark.parametrize("family", FAMILIES, ids=[family.name for family in FAMILIES])
def test_the_key_of_an_error_is_that_of_the_line_it_writes(family: Family) -> None:
    for start in range(4):
        problem = family.make(Random(start))
        solution = find_topic(problem).solve(problem)
        judge = find_topic(problem).judge(problem)
        for text in {line.text for route in solution.routes for line in route.lines}:
            line = read_line(text)
            if line.statement:
                continue
            relations = judge.relations(line)
            for change in changes(judge.form(relations[0]), judge.unknown):
                try:
                    after = form_of(change.after(), judge.unknown)
                except NoValue:
                    continue
                assert after.key == change.key, (problem, text, change)


WITH_SIDES = [error for error in QUADRATIC_EQUATIONS.errors if "=" in error.before]


@pytest.mark.parametrize("error", WITH_SIDES, ids=[error.name for error in WITH_SIDES])
def test_the_example_of_an_error_is_told_as_that_error_or_as_one_root_of_two(
    error: CommonError,
) -> None:
    if "^2" not in error.before and ")(" not in error.before:
        return  # a shared error, whose example is a linear equation
    judge = find_topic(error.before).judge(error.before)
    line = read_line(error.after)
    relations = judge.relations(line)
    form = judge.form(relations[0] if len(relations) == 1 else joined(line.alternatives))
    found = {wrong.name for wrong in judge.wrongs_to(judge.start, form)}
    partial = judge.follows(judge.start, form) is not None
    assert error.name in found or partial
