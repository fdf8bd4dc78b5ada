"""Where items are kept: the bank's tables, its opening, versions, review, search, assessments.

Nothing here imports a computer algebra system, a document or a screen.
"""
