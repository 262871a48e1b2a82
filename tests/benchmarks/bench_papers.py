"""How fast both papers are set, against drawing as much plain text with reportlab alone.

The reference writes the same number of lines of text onto the same number of pages, with the same
embedded typeface and nothing else: what no paper can go below. Measured on 2 cores shared with
other work (load 9): both papers 0.63 s, 22 times their bare text. The processor time alone is
0.13 s for a proposal of three options and 0.08 s for a ticket; three renderings add 0.2 s.
"""

import time
from io import BytesIO

import numpy as np

from framing_palette.papers import proposal_pdf, ticket_pdf
from framing_palette.papers.font_files import font_name
from framing_palette.papers.proposal import proposal_pages
from framing_palette.papers.ticket import ticket_pages
from tests.papers.made_up import option, plain, proposal_of, ticket_of

PHOTO = np.random.default_rng(1).integers(0, 255, (800, 1400, 3), np.uint8)


def best_seconds(work, times=3):
    best = float("inf")
    for _ in range(times):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


def plain_text(counts):
    from reportlab.pdfgen.canvas import Canvas

    canvas = Canvas(BytesIO(), pageCompression=1)
    for count in counts:
        canvas.setFont(font_name("regular"), 9)
        for line in range(count):
            canvas.drawString(50, 800 - line % 70 * 11, f"line {line} of plain text")
        canvas.showPage()
    canvas.save()


def test_both_papers_take_at_most_80_times_as_long_as_their_bare_text():
    ticket, proposal = ticket_of(plain()), proposal_of(*(option(srgb=PHOTO) for _ in range(3)))
    pages = (*ticket_pages(ticket), *proposal_pages(proposal))
    bare = best_seconds(lambda: plain_text([len(page.texts) for page in pages]))
    ours = best_seconds(lambda: (ticket_pdf(ticket), proposal_pdf(proposal)))
    print(f"\nboth papers: {ours:.3f} s, their bare text {bare:.3f} s, {ours / bare:.0f} times")
    assert ours / bare <= 80
