"""Does `itembank scheme audit` report, as tables, as JSON and as a page?"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.itembank.cli.conftest import Call

PROBLEM = "4(x - 3) = 2x + 9"


def test_the_screen_shows_alarms_errors_routes_points_and_cautions(call: Call) -> None:
    outcome = call("scheme", "audit", PROBLEM, "--scripts", "0")

    assert outcome.status == 0
    for words in ("By the conventions, in any scheme", "unlike terms joined inside a bracket",
                  "What each common error earns", "Routes", "Mark points",
                  "a teacher decides", "simulated"):  # fmt: skip
        assert words in outcome.out


def test_the_record_is_one_line_as_the_readme_says(call: Call) -> None:
    outcome = call("scheme", "audit", PROBLEM, "--scripts", "0", "--json")

    (line,) = outcome.out.splitlines()
    record = json.loads(line)
    assert outcome.status == 0
    assert list(record) == [
        *("problem", "topic", "version", "total", "seed", "scripts", "alarms", "routes"),
        *("points", "errors"),
    ]
    assert set(record["alarms"][0]) == {
        "kind",
        "about",
        "words",
        "rules",
        "by_conventions",
        "scripts",
        "example",
    }
    assert set(record["errors"][0]) == {
        *("error", "words", "scripts", "lowest", "commonest", "highest", "referred", "lost"),
        "example",
    }
    assert set(record["points"][0]) == {
        *("point", "stage", "value", "awarded", "wrong_step", "without_method"),
    }
    assert set(record["routes"][0]) == {"name", "all_lines", "required_lines"}
    assert set(record["errors"][0]["example"]) == {"lines", "total", "range", "awards"}
    assert record["scripts"]["distinct"] == sum(k["scripts"] for k in record["scripts"]["kinds"])


def test_chance_draws_as_many_scripts_as_are_asked_and_others_by_another_number(
    call: Call,
) -> None:
    def audit(seed: str) -> object:
        asked = ("--scripts", "250", "--seed", seed, "--json")
        return json.loads(call("scheme", "audit", "6x - 7 = 23", *asked).out)["scripts"]

    assert audit("1") == audit("1")
    assert audit("1")["tried"] == 250  # type: ignore[index]
    assert audit("1") != audit("2")


def test_the_page_is_written_whole(call: Call, tmp_path: Path) -> None:
    outcome = call("scheme", "audit", PROBLEM, "--scripts", "0", "--page", "audit.html")

    assert outcome.status == 0
    assert (tmp_path / "audit.html").read_text().rstrip().endswith("</html>")


def test_a_scheme_of_a_file_is_audited_by_its_own_points(call: Call, tmp_path: Path) -> None:
    scheme = json.loads(call("scheme", PROBLEM, "--json").out)
    scheme["points"][1]["must_be_seen"] = True
    (tmp_path / "schemes.jsonl").write_text(json.dumps(scheme) + "\n")

    outcome = call(
        "scheme", "audit", PROBLEM, "--schemes", "schemes.jsonl", "--scripts", "0", "--json"
    )

    alarms = json.loads(outcome.out)["alarms"]
    assert ("loses M2", ["3.4 the line must be seen"]) in [
        (alarm["words"], alarm["rules"]) for alarm in alarms
    ]


def test_a_file_without_the_problem_is_told(call: Call, tmp_path: Path) -> None:
    (tmp_path / "schemes.jsonl").write_text(call("scheme", "3x = 20", "--json").out)

    outcome = call("scheme", "audit", PROBLEM, "--schemes", "schemes.jsonl")

    assert outcome.status == 1
    assert "schemes.jsonl" in outcome.err
    assert PROBLEM in outcome.err


@pytest.mark.parametrize(
    ("arguments", "status", "words"),
    [
        (["6x - = 23"], 1, "column 6"),
        ([PROBLEM, "--scripts", "-4"], 2, "--scripts"),
        ([PROBLEM, "--schemes", "none.jsonl"], 1, "none.jsonl"),
        ([PROBLEM, "--page", "nowhere/audit.html", "--scripts", "0"], 1, "nowhere/audit.html"),
    ],
)
def test_bad_input_is_told(call: Call, arguments: list[str], status: int, words: str) -> None:
    outcome = call("scheme", "audit", *arguments)

    assert outcome.status == status
    assert words in outcome.err


def test_a_problem_may_begin_with_a_minus(call: Call) -> None:
    assert call("scheme", "audit", "-5x + 3 = 28", "--scripts", "0").status == 0
