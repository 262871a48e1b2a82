"""The JSON part that tells of the ranked samples."""

import json

from framing_palette.ranking import rank, rank_report
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

LINES = rank(
    findings(SEA, focus=BOAT), [sample("one", lch(40, 20, 240)), sample("two", lch(70, 60, 140))]
)


def test_the_report_holds_what_the_command_line_promises():
    report = rank_report({"picture": {"width_px": 3}, "regions": []}, LINES)
    assert next(iter(report.items())) == ("schema", "framing-palette/rank@1")
    assert report["picture"] == {"width_px": 3}
    first = report["samples"][0]
    assert {"code", "kind", "verdict", "score", "reasons", "measures"} <= set(first)
    wanted = {
        "echo_delta_e",
        "separation_delta_e",
        "separation_lightness",
        "pull",
        "harmony",
        "texture",
    }
    assert wanted <= set(first["measures"])


def test_an_unknown_measure_is_null_and_the_text_is_strict_json():
    report = rank_report({}, LINES)
    assert report["samples"][0]["measures"]["texture"] is None
    json.dumps(report, allow_nan=False)


def test_samples_come_best_first():
    scores = [entry["score"] for entry in rank_report({}, LINES)["samples"]]
    assert scores == sorted(scores, reverse=True)
