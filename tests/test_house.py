"""Is the house laid out as it should be?"""

from __future__ import annotations

import ast
import subprocess
import tomllib
from collections.abc import Iterator
from pathlib import Path

HOUSE = Path(__file__).resolve().parent.parent
TOP_LEVEL = {
    *("README.md", "DEVELOPERS.md", "pyproject.toml"),
    *("itembank", "schemes", "tests", "exports"),
}


def _files() -> list[str]:
    """Every file that belongs to the project, whether it is committed yet or not."""
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"],
        cwd=HOUSE,
        capture_output=True,
        text=True,
        check=True,
    )
    return [name for name in listed.stdout.splitlines() if (HOUSE / name).exists()]


def test_the_visible_top_level_is_what_it_should_be() -> None:
    top = {name.split("/")[0] for name in _files()}

    assert {name for name in top if not name.startswith(".")} == TOP_LEVEL


def test_the_import_contract_holds_the_direction_of_the_house() -> None:
    config = tomllib.loads((HOUSE / "pyproject.toml").read_text())["tool"]["importlinter"]
    layers, forbidden = config["contracts"]

    assert layers["layers"] == [
        "itembank.cli",
        "exports",
        "schemes",
        "itembank.bank",
        "itembank.topics",
        "itembank.algebra",
    ]
    assert {"sqlmodel", "typer", "weasyprint"} <= set(forbidden["forbidden_modules"])


# What of the schemes keeps records; everything else there belongs to the marking core.
KEEPS_RECORDS = {
    *("asking", "candidates", "consistency", "decided", "deciding", "handing_in", "recording"),
    *("remarking", "rulings", "scripts", "sitting", "standing", "suggesting"),
}


def test_every_module_of_the_marking_core_is_under_the_contract() -> None:
    config = tomllib.loads((HOUSE / "pyproject.toml").read_text())["tool"]["importlinter"]
    held = set(config["contracts"][1]["source_modules"])
    modules = {path.stem for path in (HOUSE / "schemes").glob("*.py")} - {"__init__"}

    assert held == {
        *("itembank.algebra", "itembank.topics"),
        *(f"schemes.{name}" for name in modules - KEEPS_RECORDS),
    }


def test_the_test_command_checks_lint_format_types_and_imports() -> None:
    from tests.__main__ import CHECKS

    assert [name for name, _ in CHECKS] == ["lint", "format", "types", "imports"]


def test_every_module_opens_with_the_question_it_answers() -> None:
    modules = [HOUSE / name for name in _files() if name.endswith(".py")]
    texts = {str(path): path.read_text() for path in modules}

    assert len(texts) > 20
    assert [path for path, text in texts.items() if text and not text.startswith('"""')] == []


def test_nothing_that_was_typed_is_evaluated() -> None:
    evaluating = {"eval", "exec", "compile", "sympify", "parse_expr", "lambdify"}
    packages = ("itembank/", "schemes/", "exports/")
    sources = [name for name in _files() if name.startswith(packages) and name.endswith(".py")]

    assert sources
    assert [
        f"{name}: line {call.lineno}"
        for name in sources
        for call in ast.walk(ast.parse((HOUSE / name).read_text()))
        if isinstance(call, ast.Call) and _called(call) in evaluating
    ] == []


def _called(call: ast.Call) -> str:
    """The function that a call names; a method counts only where it belongs to SymPy."""
    if isinstance(call.func, ast.Name):
        return call.func.id
    if isinstance(call.func, ast.Attribute) and isinstance(call.func.value, ast.Name):
        return call.func.attr if call.func.value.id in ("sympy", "sp") else ""
    return ""


MOST_REMEMBERED = 4_096  # entries of one memory: enough for a cohort, and soon full


def _memories(tree: ast.Module) -> Iterator[tuple[str, int]]:
    """Each function of a module that remembers, with how much: a bound, or one with no argument."""
    numbers = {
        target.id: node.value.value
        for node in tree.body
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.Constant)
        for target in node.targets
        if isinstance(target, ast.Name)
    }
    for node in ast.walk(tree):
        for maker in getattr(node, "decorator_list", ()):
            name = ast.unparse(maker).partition("(")[0].rpartition(".")[2]
            if name not in ("cache", "lru_cache"):
                continue
            arguments = node.args.args + node.args.kwonlyargs
            if name == "cache":
                yield node.name, len(arguments) and MOST_REMEMBERED + 1
                continue
            (bound,) = (word.value for word in maker.keywords if word.arg == "maxsize")
            text = ast.unparse(bound)
            yield node.name, numbers[text] if text in numbers else int(text)


def test_every_memory_is_bounded_so_that_a_long_run_does_not_grow() -> None:
    found = {
        (path, function): bound
        for path in _files()
        if path.endswith(".py") and path.partition("/")[0] in ("itembank", "schemes", "exports")
        for function, bound in _memories(ast.parse((HOUSE / path).read_text()))
    }

    assert len(found) > 30
    assert {where: bound for where, bound in found.items() if bound > MOST_REMEMBERED} == {}
