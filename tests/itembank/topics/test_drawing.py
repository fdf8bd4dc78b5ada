"""Are drawn items as many, as different and as hard as asked?"""

from __future__ import annotations

import pytest

from itembank.bank.drafts import LONGEST_TAG
from itembank.topics import Topic, topics_by_name
from itembank.topics.drawing import (
    Controls,
    alike,
    draw,
    find_family,
    fits,
    is_trivial,
    largest_of,
    lines_of,
    parallel,
    sign_of,
    value_of,
)
from itembank.topics.kinds import Family, TopicError

FAMILIES = [(topic, family) for topic in topics_by_name().values() for family in topic.families]
every_family = pytest.mark.parametrize(
    ("topic", "family"),
    FAMILIES,
    ids=[f"{topic.name}, {family.name}" for topic, family in FAMILIES],
)


@every_family
def test_a_family_gives_the_exact_number_of_different_items_none_trivial(
    topic: Topic, family: Family
) -> None:
    drawn = draw(topic, family, 12, seed=3)

    assert len(drawn) == 12
    assert len({alike(solution.problem) for solution in drawn}) == 12
    for solution in drawn:
        assert solution.checked
        assert solution.topic == topic.name
        assert not is_trivial(solution)


@every_family
def test_parallel_items_are_as_hard_as_their_model(topic: Topic, family: Family) -> None:
    (model,) = draw(topic, family, 1, seed=5)
    wanted = parallel(model)

    others = draw(topic, family, 3, seed=6, controls=wanted, without=[model.problem])

    for other in others:
        assert alike(other.problem) != alike(model.problem)
        assert [stage.name for stage in other.stages] == [stage.name for stage in model.stages]
        assert (value_of(other), lines_of(other)) == (value_of(model), lines_of(model))


def test_the_same_seed_draws_the_same_items_and_another_seed_others() -> None:
    topic, family = find_family("two steps, a whole number as value")

    assert draw(topic, family, 5, seed=1) == draw(topic, family, 5, seed=1)
    assert draw(topic, family, 5, seed=1) != draw(topic, family, 5, seed=2)


def test_every_control_holds_for_every_item() -> None:
    topic, family = find_family("brackets on both sides")
    wanted = Controls(value="fraction", sign="negative", largest=12)

    for solution in draw(topic, family, 8, controls=wanted):
        assert fits(solution, wanted)
        assert "/" in solution.answer
        assert solution.answer.partition("= ")[2].startswith("-")
        assert largest_of(solution) <= 12


def test_a_family_that_has_not_so_many_items_says_how_many_it_gave() -> None:
    topic, family = find_family("no solution")

    with pytest.raises(TopicError, match=r"gave 0 of 2 items under these controls"):
        draw(topic, family, 2, controls=Controls(value="whole"))


def test_every_family_has_a_name_of_its_own_that_fits_a_tag() -> None:
    names = [family.name for _, family in FAMILIES]

    assert len(set(names)) == len(names)
    assert [name for name in names if len(name) > LONGEST_TAG] == []


def test_there_is_no_family_of_another_name() -> None:
    with pytest.raises(TopicError, match="there is no family 'rings'"):
        find_family("rings")


@pytest.mark.parametrize(
    ("problem", "value", "sign"),
    [
        ("6x - 7 = 23", "whole", "positive"),
        ("6x + 7 = 7", "whole", "nought"),
        ("4x + 9 = 2", "fraction", "negative"),
        ("3(x + 4) = 3x + 5", "words", None),
    ],
)
def test_the_form_and_the_sign_of_a_value(problem: str, value: str, sign: str | None) -> None:
    solution = topics_by_name()["linear equations"].solve(problem)

    assert (value_of(solution), sign_of(solution)) == (value, sign)


def test_two_problems_with_other_letters_are_the_same_exercise() -> None:
    assert alike("3(x + 2) = x") == alike("3(t+2) = t")
    assert alike("3x + 2y") != alike("3x + 2x")
