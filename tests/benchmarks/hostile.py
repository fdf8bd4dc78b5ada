"""What might be typed that no one foresaw? Scripts of hostile and careless lines, seeded.

Each kind is a function of ``Random`` and of real lines of working that gives the lines of one
script. Equal states of ``Random`` give equal scripts.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from random import Random

from schemes.simulating import simulate
from tests.benchmarks.workload import ERRING, problems

PROBLEMS = 80
SCRIPTS_OF_A_PROBLEM = 5
MOST_LINES = 200  # of one script, as the contract for programs has it
LONGEST = 1_000  # characters of one line, likewise

PLAIN = "0123456789xxxy+-−*/÷×=()[]{}.,;|^²½ <>≤≈≠∴→'abcnoor…&%$#@!?\\\"_~`:"
ALIKE = {
    "x": "хΧ𝑥𝐱ｘᵡ×✕ⅹ",
    "-": "−–—‒﹣－‐⁻",
    "+": "＋﹢➕⁺",
    "=": "＝﹦≡⩵⁼",
    "/": "⁄∕／÷",
    "(": "（⟨❨⁽",
    ")": "）⟩❩⁾",
    " ": "\u00a0\u2003\u200a\u3000\u2028\u0085\u000b\u000c",
    **{str(digit): f"{chr(0xFF10 + digit)}{chr(0x660 + digit)}{chr(0x966 + digit)}"
       f"{chr(0x1D7CE + digit)}{'⁰¹²³⁴⁵⁶⁷⁸⁹'[digit]}{'₀₁₂₃₄₅₆₇₈₉'[digit]}{'⓪①②③④⑤⑥⑦⑧⑨'[digit]}"
       for digit in range(10)},
}  # fmt: skip
UNSEEN = (
    "\u200b\u200c\u200d\u2060\ufeff\u200e\u200f\u202a\u202e\u2066\u2069\u00ad\u0000\u001b\u007f"
)
COMBINING = "\u0300\u0301\u0304\u0305\u0307\u0332\u0338\u20d7\u20dd\ufe0f˙"
WORDS = (
    *("so", "therefore", "∴", "=>", "→", "no solution", "all values", "or", "and", "check", "try"),
    *("again", "is", "x is", "equals", "both sides", "(+7)", "[-4]", "÷6", "   -3", "divide by 4"),
    *("add 3 to both sides", "(1)", "(1) + (2):", "recurring", "...", "ans", "i.e.", "±", "√", "%"),
    *("x ∈ ℝ", "∅", "{ }", "anything", "never true", "3)", "a)", "=", "==", "<=", "=<", "!=", ","),
)


@dataclass(frozen=True, slots=True)
class Hostile:
    """A script to be marked: of which kind its lines are, and of which problem."""

    kind: str
    problem: str
    lines: tuple[str, ...]
    crossed_out: frozenset[int]
    show_working: bool
    comma: bool


@dataclass(frozen=True, slots=True)
class Real:
    """A problem and lines of working that pupils might hand in for it."""

    problem: str
    lines: tuple[str, ...]


def real_lines(count: int = PROBLEMS) -> list[Real]:
    """So many problems of different patterns, each with the lines of a few simulated scripts."""
    random = Random("real lines")
    found = []
    for problem in problems(count):
        scripts = [simulate(problem, random, ERRING) for _ in range(SCRIPTS_OF_A_PROBLEM)]
        texts = dict.fromkeys(line.text for script in scripts for line in script.lines)
        found.append(Real(problem, (problem, *texts)))
    return found


def hostile_script(random: Random, real: Sequence[Real]) -> Hostile:
    """One script of some kind."""
    kind = random.choices(list(KINDS), [often for often, _ in KINDS.values()])[0]
    own = random.choice(real)
    lines = tuple(line[:LONGEST] for line in KINDS[kind][1](random, own.lines))
    crossed = frozenset(at for at in range(len(lines)) if random.random() < 0.05)
    return Hostile(kind, own.problem, lines, crossed, random.random() < 0.5, random.random() < 0.1)


def _few(random: Random, make: Callable[[], str], most: int = 4) -> list[str]:
    return [make() for _ in range(random.randint(1, most))]


def characters(random: Random, real: Sequence[str]) -> list[str]:
    """Signs of school algebra in any order."""
    return _few(random, lambda: "".join(random.choices(PLAIN, k=random.randint(0, 40))))


def any_characters(random: Random, real: Sequence[str]) -> list[str]:
    """Any characters at all, halves of surrogate pairs too."""

    def one() -> str:
        top = random.choice((0x80, 0x250, 0x2FFF, 0xFFFF, 0x10FFFF))
        return "".join(chr(random.randint(0, top)) for _ in range(random.randint(1, 30)))

    return _few(random, one)


def mutated_line(random: Random, line: str) -> str:
    """A line with a few characters deleted, inserted, exchanged or doubled."""
    letters = list(line)
    for _ in range(random.randint(1, 4)):
        at = random.randrange(len(letters) + 1)
        match random.randrange(4):
            case 0:
                del letters[at : at + 1]
            case 1:
                letters.insert(at, random.choice(PLAIN))
            case 2:
                letters[at : at + 2] = letters[at : at + 2][::-1]
            case _:
                letters[at:at] = letters[at : at + random.randint(1, 3)]
    return "".join(letters)


def mutated(random: Random, real: Sequence[str]) -> list[str]:
    """Pupils' lines in their order, some of them mistyped."""
    start = random.randrange(len(real))
    chosen = real[start : start + random.randint(1, 5)]
    return [mutated_line(random, line) if random.random() < 0.7 else line for line in chosen]


def shuffled(random: Random, real: Sequence[str]) -> list[str]:
    """Pupils' lines, each as typed, in any order."""
    return random.choices(real, k=random.randint(1, 6))


def look_alikes(random: Random, real: Sequence[str]) -> list[str]:
    """Pupils' lines with other characters that look the same, unseen and combining ones."""

    def one() -> str:
        out = []
        for letter in random.choice(real):
            drawn = random.random()
            out.append(random.choice(ALIKE[letter]) if letter in ALIKE and drawn < 0.3 else letter)
            if drawn > 0.93:
                out.append(random.choice(UNSEEN if drawn > 0.965 else COMBINING))
        return "".join(out)

    return _few(random, one)


def nested(random: Random, real: Sequence[str]) -> list[str]:
    """Brackets, fractions, powers and signs within each other, up to the bounds and past them."""

    def one() -> str:
        depth = random.choice((3, 8, 12, 22, 23, 24, 25, 30, 99, 400))
        opening, closing = random.choice(
            (
                *(("(", ")"), ("2(", "+1)"), ("1/(", ")"), ("(x+", ")"), ("(", ")^2"), ("-(", ")")),
                *(("(", ")/2"), ("[", "]"), ("{", "}"), ("3(x - ", ")"), ("x(", ")"), ("(1/", ")")),
                *(("((", ")^12)"), ("--", ""), ("+-", ""), ("", "^2"), ("", "/2"), ("2×-", "")),
            )
        )
        core = random.choice(("x", "x + 1", "2x - 3", "1", "", "x/3", "x = 2"))
        side = opening * depth + core + closing * (depth - random.choice((0, 0, 0, 1, -1)))
        return side if random.random() < 0.3 else f"{side} = {random.choice(('3', 'x', side))}"

    return _few(random, one, 3)


def huge_numbers(random: Random, real: Sequence[str]) -> list[str]:
    """Numbers of many digits, long decimals, towers of powers, zero below the bar."""

    def number() -> str:
        digits = "".join(random.choices("0123456789", k=random.choice((1, 8, 29, 30, 31, 90))))
        return random.choice(
            (
                *(digits, f"{digits}.{digits}", f"0.{digits}...", f"{digits} {digits}/{digits}"),
                *(f"{digits}^12", f"{digits}^{digits}", f"9^9^9^{digits}", f"({digits}^12)^12"),
                *(f"1/{digits}", f"{digits}/0", f"0.{digits} recurring", f"{digits}e9", "0/0"),
                *(f"(((2^12)^12)^12)^{digits}", f"1.{digits}\u0307", f"{digits}½", f"2^-{digits}"),
            )
        )

    return _few(random, lambda: f"{number()}x {random.choice('+-=')} {number()} = {number()}", 3)


def long_lines(random: Random, real: Sequence[str]) -> list[str]:
    """Lines as long as a line may be, and longer ones."""

    def one() -> str:
        length = random.choice((200, 390, 400, 401, 900))
        piece = random.choice(
            (
                *("x+", "3x - ", "2*", "(x+1)", "1/2+", "x=", "2=", "= x ", " or x = 2", ", x = 3"),
                *("; x = 2", " => 4x = 3", "     ", "\t", "so ", "no solution ", "(+7) ", "   -3"),
                *(
                    "x",
                    "9",
                    "- ",
                    "((",
                    "=",
                    "x = 2 and ",
                    "÷4 ",
                    ".",
                    "½",
                    "therefore,",
                    "1 2/3 + ",
                ),
                *(random.choice(real) + " ", random.choice(WORDS) + " "),
            )
        )
        return random.choice(("", "x = ", "4x + 3 = ")) + piece * (length // len(piece))

    return _few(random, one, 2)


def many_terms(random: Random, real: Sequence[str]) -> list[str]:
    """Equations of the topic with as many terms, brackets and fractions as a line can hold."""

    def side(count: int) -> str:
        forms = ("{}x", "{}", "{}(x + {})", "(x - {})/{}", "{}x/{}", "{}({}x - {})", "x", "1/{}x")
        terms = []
        for _ in range(count):
            form = random.choice(forms)
            terms.append(form.format(*(random.randint(2, 19) for _ in range(form.count("{}")))))
        return "".join(f"{random.choice((' + ', ' - '))}{term}" for term in terms).strip(" +")

    def one() -> str:
        most = random.choice((4, 9, 13, 24, 25, 40))
        left, right = (side(random.randint(1, most)) for _ in range(2))
        return f"{left} = {right}"

    return _few(random, one, 3)


def many_lines(random: Random, real: Sequence[str]) -> list[str]:
    """Scripts with as many lines as a script may have, true and mistyped."""
    lines = random.choices(real, k=random.choice((20, 60, MOST_LINES)))
    return [mutated_line(random, line) if random.random() < 0.2 else line for line in lines]


def around(random: Random, real: Sequence[str]) -> list[str]:
    """Pupils' lines among words, notes, statements and stray signs."""

    def one() -> str:
        parts = [random.choice((random.choice(WORDS), random.choice(real))) for _ in range(4)]
        return random.choice((" ", "  ", "   ", "", "; ")).join(parts[: random.randint(1, 4)])

    return _few(random, one)


def spaced(random: Random, real: Sequence[str]) -> list[str]:
    """Pupils' lines with runs of white space wherever there can be any."""

    def one() -> str:
        spaces = random.choice((" ", "\t", "\u00a0", " \t", "\n", " - ", " ( "))
        text = "".join(
            letter + spaces * random.randint(1, 60) if random.random() < 0.2 else letter
            for letter in random.choice(real)
        )
        return text[: random.choice((60, 400))]

    return _few(random, one, 3)


KINDS: dict[str, tuple[int, Callable[[Random, Sequence[str]], list[str]]]] = {
    "characters": (10, characters),
    "any characters": (4, any_characters),
    "mutated": (24, mutated),
    "shuffled": (8, shuffled),
    "look-alikes": (8, look_alikes),
    "nested": (5, nested),
    "huge numbers": (5, huge_numbers),
    "long lines": (4, long_lines),
    "many terms": (1, many_terms),
    "many lines": (1, many_lines),
    "around": (8, around),
    "spaced": (2, spaced),
}
"""Each kind with how often it is drawn against the others."""
