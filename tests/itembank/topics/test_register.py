"""Which topic takes a problem, and what does it ask by default?"""

from __future__ import annotations

import pytest

from itembank.topics import find_topic
from itembank.topics.kinds import TopicError


@pytest.mark.parametrize(
    ("problem", "topic", "instruction"),
    [
        ("4x + 3 = 17", "linear equations", "Solve the equation."),
        ("-3 < 2x + 1 <= 7", "linear inequalities", "Solve the inequality."),
        (
            "-3 < 2x + 1 <= 7, integers",
            "linear inequalities",
            "List the integers that satisfy the inequality.",
        ),
        ("x^2 + x + 1 = 14", "quadratic equations", "Solve the equation."),
        ("4(x + 3) - 2x", "expressions", "Expand and simplify."),
        ("3x^2 - 2y, x = -2, y = 5", "expressions", "Find the value."),
        ("(x^2 - 9)/(x + 3)", "expressions", "Simplify fully."),
        ("x^2 + 5x + 6", "factorising", "Factorise fully."),
        ("x^2 = 4", "quadratic equations", "Solve the equation."),
    ],
)
def test_a_problem_finds_its_topic(problem: str, topic: str, instruction: str) -> None:
    found = find_topic(problem)
    assert (found.name, found.instruction_for(problem)) == (topic, instruction)


@pytest.mark.parametrize(
    ("problem", "reason"),
    [
        ("x^3 = 8", "an equation of degree 3: no topic takes more than 2"),
        ("x^2 + 3x = x^2 + 6", "the square terms cancel"),
        ("x(x + 3) = x^2 + 3x", "the square terms cancel"),
        ("2x + y = 3", "more than one unknown"),
        ("x^2 < 5", "no linear inequality: the unknown is raised to the power 2"),
        ("2x + y < 5", "this topic solves inequalities in one"),
        ("2x < 3y", "this topic solves inequalities in one"),
        ("1 < 2x > 3", "must point the same way"),
        ("2x ≠ 5", "needs the sign =, not ≠"),
        ("2x < 5, integers", "go on without end"),
    ],
)
def test_the_reason_is_that_of_the_problems_own_kind(problem: str, reason: str) -> None:
    with pytest.raises(TopicError, match=reason) as caught:
        find_topic(problem)
    assert ";" not in str(caught.value)


@pytest.mark.parametrize(
    ("problem", "reason"),
    [
        ("√x = 3", "the unknown stands under a root"),
        ("x - 5√x + 6 = 0", "the unknown stands under a root"),
        ("2√x + 1 < 5", "no linear inequality: the unknown stands under a root"),
        ("x + 2y = 2x - y = 9", r"for a chain type x \+ 2y = 9, 2x - y = 9"),
        ("x^2 + y^2 = 25, x + y = 7", "not linear: it holds x\\^2"),
        ("|2x - 1| = 5", "the bars of a modulus"),
        ("sin x = 1", "the function 'sin'"),
        ("3x + 5 = 20, x = 5", "two equations in two unknowns; here there are: x"),
        ("x = 3, x = 4", "no equation or inequality in one unknown"),
        ("3x = 6   (+3)", "beside it stands '\\+3'"),
        ("(x + 1)/2x = 3", r"type \(x \+ 1\)/\(2x\) or \(\(x \+ 1\)/2\)x"),
        ("5/2x - 1/x = 3", r"type 5/\(2x\) or \(5/2\)x"),
        ("2/3x + 1/x", r"type 2/\(3x\) or \(2/3\)x"),
        ("x2 + 5x + 6 = 0", r"x2 can be read in two ways: type x\^2 or 2x"),
    ],
)
def test_a_problem_that_no_topic_takes_is_sent_to_the_items_of_another_kind(
    problem: str, reason: str
) -> None:
    with pytest.raises(TopicError, match=reason) as caught:
        find_topic(problem)
    assert "any other item" in str(caught.value)


@pytest.mark.parametrize(
    ("problem", "said", "topic"),
    [
        ("Solve 3x + 1 = 10", "Solve", "linear equations"),
        ("Solve for x: 3x + 1 = 10", "Solve for x:", "linear equations"),
        ("Solve simultaneously: x + y = 3, x - y = 1", "Solve simultaneously:",
         "simultaneous equations"),
        ("Factorise fully 3x^2 - 12", "Factorise fully", "factorising"),
        ("Expand and simplify (x + 2)(x + 3)", "Expand and simplify", "expressions"),
        ("3) 3x + 1 = 10", "3)", "linear equations"),
        ("(a) x^2 = 9", "(a)", "quadratic equations"),
    ],
)  # fmt: skip
def test_an_instruction_typed_before_a_problem_is_named_with_the_topic_that_takes_the_rest(
    problem: str, said: str, topic: str
) -> None:
    with pytest.raises(TopicError) as caught:
        find_topic(problem)
    assert str(caught.value).startswith(f"'{said}' stands before the problem: type ")
    assert str(caught.value).endswith(f"the topic {topic} takes it")


def test_an_instruction_is_named_to_the_topic_that_is_asked_for() -> None:
    with pytest.raises(TopicError, match="'Factorise' stands before the problem") as caught:
        find_topic("Factorise 3(x + 2) + y(x + 2)", "factorising")
    assert str(caught.value).endswith("the topic factorising takes it")


@pytest.mark.parametrize(
    ("problem", "answer"),
    [
        ("3x+2y=16,5x-2y=8", "x = 3, y = 7/2"),
        ("x + 0,5y = 3,5; x - y = 0,5", "x = 5/2, y = 2"),
        ("0,5x + 1 = 3", "x = 4"),
        ("0,5x > 3", "x > 6"),
        ("0,5x^2 = 8", "x = ±4"),
        ("2,5/x = 5", "x = 1/2"),
        ("1/2 x + 3/x = 5", "x = 5 ± √19"),
    ],
)
def test_a_comma_between_digits_is_a_decimal_unless_equations_stand_on_both_sides(
    problem: str, answer: str
) -> None:
    assert find_topic(problem).solve(problem).answer == answer


@pytest.mark.parametrize(
    "problem",
    [
        "(1) x + y = 3, (2) x - y = 1",
        "(1) x + y = 3 and (2) x - y = 1",
        "(i) x + y = 3, (ii) x - y = 1",
        "x + y = 3 (1), x - y = 1 (2)",
    ],
)
def test_the_number_of_an_equation_is_no_factor(problem: str) -> None:
    assert find_topic(problem).solve(problem).answer == "x = 2, y = 1"


@pytest.mark.parametrize(
    ("problem", "topic", "other"),
    [
        ("x^2 + 5x + 6", "expressions", "factorising"),
        ("x^2 + 5x + 6 = 0", "factorising", "quadratic equations"),
        ("2x + 3 = 7", "quadratic equations", "linear equations"),
        ("2x + 3 < 7", "linear equations", "linear inequalities"),
    ],
)
def test_a_problem_put_into_the_wrong_topic_is_told_the_right_one(
    problem: str, topic: str, other: str
) -> None:
    with pytest.raises(TopicError, match=f"the topic '{other}' takes it"):
        find_topic(problem, topic)
