"""Are items drawn into the bank as a head of department asks for them?"""

from __future__ import annotations

import json

from tests.itembank.cli.conftest import Call

FAMILY = "the unknown on both sides"


def test_items_are_drawn_solved_and_added_as_drafts(call: Call) -> None:
    call("bank", "create")

    drawn = call("item", "draw", FAMILY, "--count", "3", "--value", "whole", "--by", "T-04")

    assert drawn.status == 0, drawn.err
    assert drawn.out.count("Added as a draft") == 3
    shown = json.loads(call("item", "show", "LE-0002", "--json").out)
    assert shown["tags"] == [FAMILY]
    assert shown["state"] == "draft"
    assert "/" not in shown["solution"]["answer"]


def test_parallel_items_have_the_stages_of_their_model(call: Call) -> None:
    call("bank", "create")
    call("item", "draw", FAMILY, "--by", "T-04")

    drawn = call("item", "draw", "--like", "LE-0001", "--count", "2", "--by", "T-04")

    assert drawn.status == 0, drawn.err
    points = [
        [
            point["stage"]
            for point in json.loads(call("item", "show", code, "--json").out)["scheme"]["points"]
        ]
        for code in ("LE-0001", "LE-0002", "LE-0003")
    ]
    assert points[0] == points[1] == points[2]


def test_what_cannot_be_drawn_is_said_and_nothing_is_added(call: Call) -> None:
    call("bank", "create")

    few = call("item", "draw", "no solution", "--value", "whole", "--by", "T-04")
    unknown = call("item", "draw", FAMILY, "--value", "round", "--by", "T-04")
    neither = call("item", "draw", "--by", "T-04")

    assert "gave 0 of 1 items" in few.err
    assert "'round' is none of whole, fraction" in unknown.err
    assert "name a family, or an item with --like" in neither.err
    assert [one.status for one in (few, unknown, neither)] == [1, 1, 1]
    assert "0 items in all" in call("item", "list").out


def test_every_family_is_listed_with_an_example(call: Call) -> None:
    rows = [json.loads(line) for line in call("item", "families", "--json").out.splitlines()]

    assert FAMILY in [row["family"] for row in rows]
    assert all(row["example"] and row["year"] and row["minutes"] for row in rows)
    assert "unknown topic 'knots'" in call("item", "families", "--topic", "knots").err
