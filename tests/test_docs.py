"""Do the documents say what the program does? A page that has drifted fails here."""

from __future__ import annotations

import json
import re
import subprocess
from collections.abc import Iterator
from dataclasses import fields
from pathlib import Path
from typing import Any

import pytest
import typer

from itembank.algebra import grammar
from itembank.cli import contract, streams
from itembank.cli.app import app
from itembank.topics import find_topic, topics_by_name
from schemes.cautions import CAUTIONS
from schemes.scheme import Settings, setting_faults
from schemes.verdicts import VERDICTS

HOUSE = Path(__file__).resolve().parent.parent
README = (HOUSE / "README.md").read_text()
DEVELOPERS = (HOUSE / "DEVELOPERS.md").read_text()
CONVENTIONS = (HOUSE / "schemes" / "conventions.md").read_text()
CI = (HOUSE / ".ci" / "run").read_text()


def _commands(group: Any, name: str) -> Iterator[tuple[str, Any]]:
    """Every command with its full name; a group that runs by itself counts as one."""
    for part, command in group.commands.items():
        full = f"{name} {part}"
        if not hasattr(command, "commands"):
            yield full, command
        elif part == "scheme":  # `scheme PROBLEM` is the command; `scheme show` is its long name
            yield full, command.commands["show"]
            yield f"{full} audit", command.commands["audit"]
        else:
            yield from _commands(command, full)


COMMANDS = dict(_commands(typer.main.get_command(app), "itembank"))


def _table(text: str, heading: str) -> list[list[str]]:
    """The rows of the table under a heading row, each as its cells."""
    rows = text[text.index(heading) :].splitlines()[2:]
    end = next((at for at, row in enumerate(rows) if not row.startswith("|")), len(rows))
    return [[cell.strip() for cell in row.strip("|").split("|")] for row in rows[:end]]


def test_the_readme_names_every_command_and_no_other() -> None:
    named = [row[0].strip("`") for row in _table(README, "| command | what it does |")]

    assert sorted(named) == sorted(COMMANDS)


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_says_what_it_does_and_what_each_option_means(name: str) -> None:
    command = COMMANDS[name]

    assert command.help
    assert [param.name for param in command.params if not getattr(param, "help", "")] == []


def test_the_two_commands_of_the_readme_stand_alone_in_their_blocks() -> None:
    found = re.findall(r"```sh\n(python3 -m venv [^\n]*)\n```", README)

    assert len(found) == 2
    assert found[0].endswith(".venv/bin/itembank demo --out demo")
    assert found[1].endswith(".venv/bin/python -m tests")
    for command in found:  # `sh -n` reads a command without running it
        assert subprocess.run(["sh", "-n", "-c", command], check=False).returncode == 0


def test_ci_installs_what_the_readme_lists() -> None:
    listed = {
        package
        for row in _table(README, "| package | what for |")
        for package in re.findall(r"`([^`]+)`", row[0])
    }
    installed = re.search(r"packages=\(\n(.*?)\n\)", CI, re.DOTALL)

    assert installed is not None
    assert set(installed.group(1).split()) == listed


def test_the_settings_table_is_that_of_the_program() -> None:
    rows = _table(CONVENTIONS, "| setting | default | other values |")

    assert [row[0].strip("`") for row in rows] == [field.name for field in fields(Settings)]
    for name, default, others, rule, words in rows:
        values = [json.loads(value) for value in re.findall(r"`([^`]+)`", f"{default} {others}")]
        assert values[0] == getattr(Settings(), name.strip("`"))
        for value in values:
            assert setting_faults({name.strip("`"): value}) == []
        assert re.fullmatch(r"\d(\.\d+)?", rule)
        assert words


def test_the_settings_table_lists_every_choice() -> None:
    fault_lists = {name: setting_faults({name: "?"})[0] for name in ("unwritten_slip", "trials")}
    rows = {row[0].strip("`"): row for row in _table(CONVENTIONS, "| setting | default | other")}

    for name, fault in fault_lists.items():
        choices = fault.partition("one of ")[2].split(", ")
        shown = re.findall(r'"([^"]+)"', f"{rows[name][1]} {rows[name][2]}")
        assert shown == choices


def test_the_verdicts_are_listed_in_order() -> None:
    listed = README.partition("`verdict` is one of ")[2].partition(". In a special")[0]

    assert tuple(re.findall(r"`([^`]+)`", listed)) == VERDICTS


def test_the_bounds_are_those_of_the_program() -> None:
    assert contract.LONGEST_PROBLEM == contract.LONGEST_LINE
    assert (
        f"a record has at most {streams.LONGEST_RECORD:,} bytes, a script at most "
        f"{contract.MOST_LINES} lines, a problem and a line at most "
        f"{contract.LONGEST_LINE:,} characters each; a line of more than "
        f"{grammar.LONGEST_LINE} characters is unreadable"
    ) in README


def test_the_cautions_stand_in_the_readme() -> None:
    text = re.sub(r"\s+", " ", README).lower()

    for caution in CAUTIONS:
        assert re.sub(r"^the engine suggests", "the engine suggests", caution.lower()) in text


def test_the_marking_conventions_are_linked_and_keep_their_sections() -> None:
    sections = re.findall(r"^## (\d)\. ", CONVENTIONS, re.MULTILINE)

    assert "schemes/conventions.md" in README
    assert "schemes/conventions.md" in DEVELOPERS
    assert sections == [str(number) for number in range(1, 9)]


def test_every_link_between_the_documents_leads_somewhere() -> None:
    links = re.findall(r"\]\(([^)#]+)", README + DEVELOPERS)

    assert links
    assert [link for link in links if not (HOUSE / link).exists()] == []


def test_the_layout_names_only_what_is_there() -> None:
    tree = DEVELOPERS.partition("```\n")[2].partition("```")[0]
    folders: list[str] = []

    for line in tree.splitlines():
        name = line.split()[0]
        depth = (len(line) - len(line.lstrip())) // 2
        if depth > 3:  # the second line of a description
            continue
        folders = [*folders[:depth], name.rstrip("/")]
        assert (HOUSE / "/".join(folders)).exists(), name
    assert len(tree.splitlines()) > 20


def test_the_readme_names_every_topic_and_an_example_that_it_takes() -> None:
    rows = _table(README, "| topic | for example |")[:-1]
    linked = {row[0].partition("[")[2].partition("]")[0]: row for row in rows}

    assert set(linked) == set(topics_by_name())
    for name, (topic, examples) in linked.items():
        assert (HOUSE / topic.partition("(")[2].partition(")")[0]).is_file()
        for example in re.findall(r"`([^`]+)`", examples):
            assert find_topic(example).name == name
