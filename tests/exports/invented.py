"""Invented documents that the tests of the exports share."""

from __future__ import annotations

from exports.documents import (
    ErrorCount,
    Guide,
    GuideError,
    GuideForm,
    GuideLine,
    GuidePoint,
    GuideQuestion,
    GuideRoute,
    Paper,
    PaperQuestion,
    PointFacility,
    Sample,
    SampleLine,
    SamplePoint,
    SampleQuestion,
    SampleScript,
    Summary,
    SummaryQuestion,
)

DEPARTMENT = "Mathematics Department, Harrow Quay School"

LONG = "5 - 2(3x - (4 - x)) + (2x - 5)/6 - 3(x + 2)/4 = 7x + 2 1/2 - (5x - 1)/12 + 3(2 - (x - 7)/2)"

PAPER = Paper(
    title="Linear equations, spring test",
    department=DEPARTMENT,
    questions=(
        PaperQuestion("Solve", "6x - 7 = 23", 2, 3),
        PaperQuestion("Solve", "4(x - 3) = 2x + 9", 4, 5),
        PaperQuestion("Solve", "6x = 35", 1, 2),
        PaperQuestion("Solve", LONG, 5, 12),
    ),
    minutes=40,
    calculator=False,
    invented=True,
)

GUIDE = Guide(
    title="Linear equations, spring test",
    department=DEPARTMENT,
    questions=(
        GuideQuestion(
            instruction="Solve",
            problem="6x - 7 = 23",
            points=(
                GuidePoint("M1", 1, "constants collected"),
                GuidePoint("A1", 1, "value of the unknown", ("M1",), follow_through=True),
            ),
            routes=(
                GuideRoute(
                    "constants first",
                    (
                        GuideLine("6x - 7 = 23", "", True),
                        GuideLine("6x - 7 + 7 = 23 + 7", "add 7 to both sides", False),
                        GuideLine("6x = 30", "add 7 to both sides", True, ("M1",)),
                        GuideLine("x = 5", "divide both sides by 6", True, ("A1",)),
                    ),
                ),
                GuideRoute(
                    "twelve lines",
                    tuple(GuideLine(LONG, "a step in many words " * 4, True) for _ in range(12)),
                ),
            ),
            accepted=(GuideForm("x = 5"),),
            refused=(GuideForm("x = 10/2", "unfinished: the division is left"),),
            follow_through=("M1: judged on the candidate's own line before it.",),
            settings=(("decimal comma", "yes"),),
            errors=(
                GuideError("wrong inverse", "6x = 16", (("M1", 0), ("A1", 0)), 0, 0, 0),
                GuideError(
                    "a rather long name for an error that nobody makes but that must fit",
                    "6x = 31",
                    (("M1", 0), ("A1", 0)),
                    0,
                    0,
                    1,
                ),
            ),
            notes=("Accept a trial that is written out.",),
        ),
        GuideQuestion(
            instruction="Solve",
            problem="6x = 35",
            points=(GuidePoint("B1", 1, "value of the unknown"),),
            routes=(GuideRoute("divide", (GuideLine("x = 5 5/6", "divide", True, ("B1",)),)),),
        ),
    ),
)

SAMPLE = Sample(
    assessment="Linear equations, spring test",
    department=DEPARTMENT,
    method="simple random choice among the marked scripts",
    starting_number=4711,
    drawn_from=90,
    drawn_by="Head of department",
    drawn_on="14 May 2026",
    scripts=tuple(
        SampleScript(
            code,
            (
                SampleQuestion(
                    1,
                    "6x - 7 = 23",
                    (SampleLine("6x = 16", crossed_out=True), SampleLine("6x = ) 30 (")),
                    (
                        SamplePoint("M1", 1, "constants collected", 1, 2, "the operation is right"),
                        SamplePoint("A1", 1, "value of the unknown", 0, None, "no value"),
                    ),
                ),
                SampleQuestion(
                    2, "6x = 35", (), (SamplePoint("B1", 1, "value of the unknown", None),)
                ),
            ),
        )
        for code in ("HQ-004", "HQ-031")
    ),
)

SUMMARY = Summary(
    assessment="Linear equations, spring test",
    department=DEPARTMENT,
    total=12,
    totals=(12, 9, 9, 8, 6, 4, 0),
    questions=(
        SummaryQuestion("6x - 7 = 23", (PointFacility("M1", 5, 7), PointFacility("A1", 3, 7))),
        SummaryQuestion(LONG, (PointFacility("M1", 1, 7), PointFacility("M2", 2, 7))),
    ),
    errors=(
        ErrorCount("unlike terms joined", 1, "13x = 37"),
        ErrorCount("wrong inverse: a term moved across without a change of its sign", 4, "6x = 16"),
        ErrorCount("never seen", 0),
    ),
    absent=2,
    referred=1,
    invented=True,
)
