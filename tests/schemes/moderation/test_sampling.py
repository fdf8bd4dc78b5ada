"""Is a sample drawn by its seed, recorded with it, from those who handed in?"""

from __future__ import annotations

from collections import Counter

import pytest
from scipy.stats import chisquare
from sqlmodel import Session

from itembank.bank.faults import BankFaults
from schemes.candidates import CandidateDraft, register_candidates
from schemes.handing_in import ScriptDraft, hand_in_scripts
from schemes.moderation.sampling import draw_sample, find_sample, samples_of
from tests.banks import sat_assessment, set_assessment


def test_a_sample_is_recorded_with_its_seed_and_can_be_drawn_again(session: Session) -> None:
    assessment = sat_assessment(session, candidates=30, questions=1)
    first = draw_sample(session, assessment, 8, "T-01", seed=2026)
    again = draw_sample(session, assessment, 8, "T-02", seed=2026)
    other = draw_sample(session, assessment, 8, "T-02")
    assert again.candidates == first.candidates
    assert len(set(first.candidates)) == 8
    assert (first.seed, first.method, first.population) == (2026, "simple random", 30)
    assert samples_of(session, assessment) == [first, again, other]
    assert find_sample(session, assessment) == other
    assert find_sample(session, assessment, first.number) == first


def test_only_those_who_handed_in_a_response_are_drawn(session: Session) -> None:
    assessment = set_assessment(session)
    register_candidates(
        session,
        assessment,
        [
            CandidateDraft("HQ-001"),
            CandidateDraft("HQ-002", "absent"),
            CandidateDraft("HQ-003"),
            CandidateDraft("HQ-004"),
        ],
    )
    hand_in_scripts(
        session,
        assessment,
        [
            ScriptDraft("HQ-001", 1, state="on paper"),
            ScriptDraft("HQ-001", 2, state="no response"),
            ScriptDraft("HQ-003", 1, state="no response"),
        ],
    )
    assert draw_sample(session, assessment, 1, "T-01").candidates == ("HQ-001",)
    with pytest.raises(BankFaults, match="a sample of 2 cannot be drawn: 1 candidates"):
        draw_sample(session, assessment, 2, "T-01")


def test_every_candidate_is_as_likely_as_any_other(session: Session) -> None:
    # Pearson's chi-squared test against equal chances (scipy.stats.chisquare); the seeds are
    # fixed, so that the test gives the same answer every time.
    assessment = sat_assessment(session, candidates=10, questions=1)
    drawn = Counter(
        candidate
        for seed in range(150)
        for candidate in draw_sample(session, assessment, 3, "T-01", seed=seed).candidates
    )
    assert len(drawn) == 10
    assert chisquare(list(drawn.values())).pvalue > 0.01


def test_what_cannot_be_drawn_is_told_at_once(session: Session) -> None:
    assessment = sat_assessment(session)
    with pytest.raises(BankFaults) as told:
        draw_sample(session, assessment, 0, "", seed=-1)
    assert len(told.value.faults) == 3
    with pytest.raises(BankFaults, match="no sample 4 has been drawn"):
        find_sample(session, assessment, 4)
