"""``itembank solve``: how is a problem worked, and what is its answer?"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.contract import Record, problem_request, solution_record
from itembank.cli.printing import console, say, table, tell_errors, yes
from itembank.cli.streams import answer_each, answer_one, json_writer, opened_out, read_json_lines
from itembank.cli.usage import exactly_one, problem_text

if TYPE_CHECKING:
    from rich.console import Console

    from itembank.topics.kinds import Solution


def solve(
    problem: Annotated[
        str | None,
        typer.Argument(
            metavar="PROBLEM",
            help="The problem as typed, e.g. '6x - 7 = 23'.",
            callback=problem_text,
        ),
    ] = None,
    topic: Annotated[
        str | None,
        typer.Option(help="The topic, for a problem that more than one topic could take."),
    ] = None,
    json: Annotated[bool, typer.Option("--json", help="Print one line of JSON.")] = False,
    jsonl: Annotated[
        str | None,
        typer.Option(metavar="FILE", help="Solve a file of JSON lines; - is standard input."),
    ] = None,
    out: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Write the answers here, whole or not at all."),
    ] = None,
) -> None:
    """Work a problem by every sensible route, each line checked.

    Required lines are ticked: they are what a full solution shows.
    """
    exactly_one(problem=problem, jsonl=jsonl)
    if jsonl is not None:
        with opened_out(out) as stream:
            wrong = answer_each(read_json_lines(jsonl), _answer, json_writer(stream))
        tell_errors(wrong, out)
        raise typer.Exit(1 if wrong else 0)
    record = {"problem": problem, "topic": topic}
    if json:
        raise typer.Exit(answer_one(record, _answer))
    show_solution(console(), _solved(record))


def solution_of(problem: str, topic: str | None) -> Solution:
    """The reference solution of a problem; see :meth:`Topic.solve` for what is raised."""
    from itembank.topics import find_topic

    return find_topic(problem, topic).solve(problem)


def _solved(record: Record) -> Solution:
    request = problem_request(record)
    return solution_of(request.problem, request.topic)


def _answer(record: Record) -> Record:
    return solution_record(record.get("id"), _solved(record))


def show_solution(screen: Console, solution: Solution) -> None:
    """Print a reference solution: the answer, its accepted forms, each route line by line."""
    say(screen, f"{solution.problem}   ({solution.topic})", "bold")
    say(screen, f"Answer: {solution.answer}")
    if len(solution.forms) > 1:
        say(screen, f"Accepted forms: {',  '.join(solution.forms)}")
    for route in solution.routes:
        rows = [(line.text, line.step, line.stage, yes(line.required)) for line in route.lines]
        screen.print(table(route.name, ("Line=", "Step", "Stage", "Required"), rows))
