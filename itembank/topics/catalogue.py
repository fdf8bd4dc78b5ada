"""Which errors do pupils make? The catalogue: each in plain words, with its source.

Plain data; how an error rewrites a line stands with the topic. Sources are published research on
errors in school algebra; *from memory* where a detail was not checked against the text.
"""

from __future__ import annotations

from dataclasses import dataclass

COMMON = "common practice, no source"
HALL = (
    "R. D. G. Hall 2002, An analysis of errors made in the solution of simple linear equations, "
    "Philosophy of Mathematics Education Journal 15"
)
LARINO = (
    "L. B. Larino 2018, An analysis of errors made by grade 7 students in solving simple linear "
    "equations in one variable, International Journal of Scientific & Engineering Research 9(12)"
)
POWELL = (
    "A. N. Powell 2013, master's study of mistakes in multi-step linear equations, State "
    "University of New York (abstract)"
)
LIM = (
    "Lim Kok Seng 2010, An error analysis of Form 2 (Grade 7) students in simplifying algebraic "
    "expressions, Electronic Journal of Research in Educational Psychology 8(1), 139-162"
)
GUMPO = (
    "L. Gumpo 2014, Grade 9 learners' strategies and errors in solving arithmetic and algebraic "
    "linear equations, University of the Witwatersrand"
)
BOOTH = (
    "J. L. Booth, C. Barbieri and others 2014, Persistent and pernicious errors in algebraic "
    "problem solving, Journal of Problem Solving 7 (from memory)"
)
DETACHED = (
    "N. Herscovics and L. Linchevski 1994, A cognitive gap between arithmetic and algebra, "
    "Educational Studies in Mathematics 27, 59-78"
)
INSERTED = 'K. Lee and J. R. Star, The "insertion" error in solving linear equations'
SLEEMAN = (
    "D. Sleeman 1984, An attempt to understand students' understanding of basic algebra, "
    "Cognitive Science 8, 387-412 (from memory)"
)
MATZ = "M. Matz 1980, Journal of Mathematical Behavior 3 (from memory)"
KIERAN = "C. Kieran 1984, 1992 (from memory)"
VLASSIS = "J. Vlassis 2001, Solving equations with negatives, PME 25 (from memory)"


@dataclass(frozen=True, slots=True)
class CommonError:
    """One error that pupils make.

    ``name`` is what teachers would call it, ``words`` a plain description, ``when`` what moves a
    pupil to it, ``source`` where it is described; ``before`` and ``after`` show it on one example.
    """

    name: str
    words: str
    when: str
    source: str
    before: str
    after: str


# Brackets

FIRST_ONLY = CommonError(
    "first term of the bracket only",
    "the factor multiplies the first term of the bracket and leaves the others",
    "the factor stands next to the first term",
    f"{LIM}; {MATZ}",
    "5(x - 2)",
    "5x - 2",
)
LAST_ONLY = CommonError(
    "last term of the bracket only",
    "the factor multiplies the last term of the bracket and leaves the others",
    "the unknown stands last and is felt to be what the factor belongs to",
    COMMON,
    "4(7 - x)",
    "7 - 4x",
)
NUMBER_FIRST_ONLY = CommonError(
    "number reaches the first term only",
    "the minus reaches every term of the bracket, the number only the first",
    "attention is on the minus before the bracket",
    COMMON,
    "-2(x + 3)",
    "-2x - 3",
)
EXPANDING_SIGN = CommonError(
    "sign lost in expanding",
    "a term of the bracket is multiplied by the right number but has the wrong sign",
    "a minus stands before the bracket or inside it",
    f"{LIM}; {POWELL}",
    "4(7 - x)",
    "28 + 4x",
)
MINUS_FIRST_ONLY = CommonError(
    "minus reaches the first term only",
    "a minus before the bracket turns the first term's sign and not the others'",
    "the bracket has three terms or more",
    COMMON,
    "-(x + 3 - y)",
    "-x + 3 - y",
)
FACTOR_ADDED = CommonError(
    "factor added to the bracket",
    "the factor is added to the bracket, or to its number, rather than multiplied in",
    "nothing is written between the factor and the bracket",
    COMMON,
    "4(x + 3)",
    "4x + 7",
)
FACTOR_DROPPED = CommonError(
    "factor of the bracket dropped",
    "the bracket is taken away without its factor",
    "removing the bracket is taken for the whole step",
    COMMON,
    "4(x + 3)",
    "x + 3",
)
MINUS_DROPPED = CommonError(
    "minus before the bracket dropped",
    "the bracket is multiplied by the factor without its minus",
    "the minus is read as the sign between two terms only",
    COMMON,
    "7 - 2(x + 3)",
    "7 + 2x + 6",
)
JOINED_IN_BRACKET = CommonError(
    "unlike terms joined inside a bracket",
    "the unknown and the number inside a bracket are joined before it is multiplied out",
    "brackets are to be worked out first",
    f"{GUMPO}; {BOOTH}",
    "4(x + 3)",
    "4 × 4x",
)
FACTOR_JOINED = CommonError(
    "term joined to the factor of a bracket",
    "a number, or the coefficient of a term, beside a bracket is added to the bracket's factor",
    "a number stands before the bracket's factor and can be worked out at once",
    f"{SLEEMAN}; the form: {COMMON}",
    "9 - 2(x + 3)",
    "7(x + 3)",
)
INSIDE_BRACKET = CommonError(
    "operation put inside a bracket",
    "the number inside a bracket is taken away inside it, as if it stood by itself",
    "the number inside the bracket is to be undone first",
    INSERTED,
    "2(x + 1) = 10",
    "2x = 9",
)

# Joining

UNLIKE_JOINED = CommonError(
    "unlike terms joined",
    "a term in the unknown and a number are joined as if they were like terms",
    "a sum is felt to be unfinished",
    f"{GUMPO}; {BOOTH}",
    "4x + 9",
    "13x",
)
JOINING_SIGN = CommonError(
    "sign lost in joining",
    "like terms are joined with the wrong sign before one of them",
    "the minus is detached from its term",
    f"{DETACHED}; {LARINO}",
    "9x - 4x",
    "13x",
)
LIKE_MULTIPLIED = CommonError(
    "like terms multiplied",
    "the coefficients of like terms are multiplied rather than added",
    "expanding has just been practised",
    COMMON,
    "3x + 2x",
    "6x",
)
UNKNOWN_CANCELLED = CommonError(
    "unknown cancelled against a term",
    "a single unknown is taken away from a term as if it were the letter",
    "a bare unknown stands beside one with a coefficient",
    MATZ,
    "5x - x",
    "5",
)

# Fractions

FRACTIONS_ACROSS = CommonError(
    "fractions added wrongly",
    "numerators are added without a common denominator, or denominators are added too",
    "two fractions with the unknown stand on one side",
    f"{BOOTH}; the form: {COMMON}",
    "x/2 + x/3",
    "2x/5",
)
ONE_CANCELLED = CommonError(
    "one term cancelled",
    "the denominator is cancelled against one term of the numerator only",
    "one term of the numerator is a multiple of the denominator",
    MATZ,
    "(6x + 5)/3",
    "2x + 5",
)
NOT_MULTIPLIED = CommonError(
    "one term not multiplied",
    "both sides are multiplied to clear fractions but one term is left as it was",
    "a term that is no fraction seems to need no clearing",
    f"omission: {LARINO}; the form: {COMMON}",
    "x/3 + 2 = 9",
    "x + 2 = 27",
)
FRACTIONS_MULTIPLIED = CommonError(
    "only the fractions multiplied",
    "the fractions, or all terms in the unknown, are multiplied to clear them, the others left",
    "whole numbers seem to need no clearing",
    COMMON,
    "x/3 - 2 = x/6 + 1",
    "2x - 2 = x + 1",
)
SIDE_NOT_MULTIPLIED = CommonError(
    "one side not multiplied",
    "one side is multiplied to clear fractions and the other left as it was",
    "the other side holds no fraction",
    f"{KIERAN}; the form: {COMMON}",
    "x/2 + x/3 = 10",
    "3x + 2x = 10",
)
BARS_DROPPED = CommonError(
    "denominators dropped",
    "each fraction loses its own denominator, whatever the others are",
    "each denominator is cleared by itself",
    COMMON,
    "x/2 + x/3 = 10",
    "x + x = 60",
)
BARS_EXCHANGED = CommonError(
    "denominators exchanged",
    "each numerator is multiplied by its own denominator rather than by the other's",
    "multiplying across is remembered as a pattern",
    COMMON,
    "(x + 2)/3 = (x - 1)/5",
    "3(x + 2) = 5(x - 1)",
)
DIVIDED_BY_BAR = CommonError(
    "divided rather than multiplied by the denominator",
    "the denominator is taken away on one side and divides the other",
    "the fraction bar calls for a division",
    f"{SLEEMAN}; the form: {COMMON}",
    "(x - 3)/2 = 8",
    "x - 3 = 4",
)

BAR_TOO_FAR = CommonError(
    "fraction bar drawn too far",
    "a term that stood beside the fraction is drawn above its bar",
    "the fraction stands first and the line is copied in a hurry",
    COMMON,
    "x/3 + 2 = 9",
    "(x + 2)/3 = 9",
)
BAR_ADDED = CommonError(
    "denominator added rather than multiplied",
    "the division by the denominator is undone by adding it",
    "adding has just undone a subtraction",
    f"{SLEEMAN}; the form: {COMMON}",
    "(x + 8)/3 = 5",
    "x + 8 = 8",
)

# Moving

KEPT_SIGN = CommonError(
    "moved without changing its sign",
    "a term is taken to the other side and keeps its sign: the inverse operation is wrong",
    "the term is moved as a thing, not undone by an operation",
    f"{HALL}; {LARINO}; {POWELL}",
    "4x + 9 = 37",
    "4x = 37 + 9",
)
DROPPED = CommonError(
    "term dropped",
    "a term is left out",
    "the line is long, or the term was dealt with in the head",
    f"omission: {HALL}",
    "4x + 9 = 37",
    "4x = 37",
)
SIGN_LOST = CommonError(
    "sign lost",
    "a term loses its minus on the way to the next line",
    "the minus leads the line",
    f"{LARINO}; {VLASSIS}",
    "15 - 4x = 29",
    "4x = 14",
)
EXCHANGED = CommonError(
    "terms exchanged in subtracting",
    "the two numbers, or the two unknown terms, are subtracted the wrong way round",
    "the first number written is taken to be the one to subtract from",
    f"{HALL}; {BOOTH}",
    "9 + 4x = 37",
    "4x = 9 - 37",
)
ONE_SIDE = CommonError(
    "operation on one side only",
    "the operation is carried out on one side and not on the other",
    "the sign of equality is read as: and the answer is",
    f"{KIERAN}; {BOOTH}",
    "4x + 9 = 37",
    "4x + 9 = 28",
)

# Multiplying and dividing both sides

NOT_DIVIDED = CommonError(
    "one term not divided",
    "both sides are divided but one term is left as it was",
    "the coefficient is divided out before the constant is moved",
    f"{MATZ}; omission: {LARINO}",
    "4x + 8 = 20",
    "x + 8 = 5",
)
LETTERS_DIVIDED = CommonError(
    "only the unknown's terms divided",
    "the terms in the unknown are divided and the numbers left as they were",
    "the coefficients have a common factor",
    COMMON,
    "6x + 4 = 2x + 10",
    "3x + 4 = x + 10",
)
SIDE_NOT_DIVIDED = CommonError(
    "one side not divided",
    "one side is divided and the other left as it was",
    "the aim is a bare unknown on one side",
    KIERAN,
    "4x + 8 = 20",
    "x + 2 = 20",
)
TERM_STRIPPED = CommonError(
    "only the unknown's term divided",
    "the coefficient, or the bar under the unknown, is taken away and nothing else changed",
    "the aim is a bare unknown",
    COMMON,
    "4x + 8 = 20",
    "x + 8 = 20",
)
COEFFICIENT_SUBTRACTED = CommonError(
    "coefficient subtracted",
    "the coefficient or factor is taken away from the other side rather than divided by",
    "subtracting has just undone an addition",
    SLEEMAN,
    "4(x + 3) = 22",
    "x + 3 = 18",
)

# The last division

WRONG_WAY_ROUND = CommonError(
    "divided the wrong way round",
    "the coefficient is divided by the number",
    "the coefficient is the larger number, or stands first",
    HALL,
    "6x = 35",
    "x = 6/35",
)
DIVISION_SIGN = CommonError(
    "sign lost in the last division",
    "the division by a negative coefficient, or of a negative number, gives the wrong sign",
    "the coefficient is negative",
    f"{HALL}; {VLASSIS}",
    "-5x = 25",
    "x = 5",
)
LAST_MULTIPLIED = CommonError(
    "multiplied rather than divided",
    "the last step multiplies by the coefficient",
    "the product in the term is repeated instead of undone",
    f"{SLEEMAN}; the form: {COMMON}",
    "6x = 30",
    "x = 180",
)
FACTOR_REPEATED = CommonError(
    "multiplied by the factor of the bracket",
    "the factor of the bracket is taken away on one side and multiplies the other",
    "the product before the bracket is repeated instead of undone",
    f"{SLEEMAN}; the form: {COMMON}",
    "3(x + 4) = 27",
    "x + 4 = 81",
)
LAST_SUBTRACTED = CommonError(
    "coefficient taken away last",
    "the last step takes the coefficient away or adds it rather than dividing by it",
    "the hidden product is read as a sum",
    f"{SLEEMAN}; the form: {COMMON}",
    "6x = 30",
    "x = 24",
)
