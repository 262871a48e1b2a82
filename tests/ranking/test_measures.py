"""Each measure alone: right values, order, and hostile numbers."""

from dataclasses import replace

import numpy as np
import pytest

from framing_palette.colour import delta_e_2000
from framing_palette.picture import Accent
from framing_palette.ranking import HOUSE_RULE, Verdict, columns_of, ranking
from framing_palette.ranking.echo import closeness, family_degree, family_distance
from framing_palette.ranking.kinship import kinship
from framing_palette.ranking.measuring import BLOCK, measure
from framing_palette.ranking.near_miss import hue_presence, near_miss, stray
from framing_palette.ranking.neighbours import BEST_PAIR, neighbour_merit
from framing_palette.ranking.pull import brightness, overpowering, pull, vividness
from framing_palette.ranking.ramps import bell, rise, saturating, sigmoid
from framing_palette.ranking.separation import MIDDLE_COUNTS, foil, plainness, separation
from framing_palette.ranking.subjects import subject_of
from framing_palette.ranking.warmth import warmth_mismatch
from framing_palette.ranking.whites import PAPER_WHITE_AB, warm
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

LIMITS = HOUSE_RULE.limits
SUBJECT = subject_of(findings(SEA, focus=BOAT, rim=SEA[:3]))
RED = lch(52, 62, 40)


def _labs(*labs):
    return np.array(labs, dtype=np.float64)


def _family(own, target):
    return float(family_distance(kinship(_labs(own), _labs(target)), LIMITS)[0, 0])


# --- ramps ---------------------------------------------------------------------------------------


def test_ramps_start_and_end_where_they_say():
    assert rise([0, 1, 2, 3, 9], 1, 3).tolist() == [0, 0, 0.5, 1, 1]
    assert bell([0.0, 1.0], 1.0).tolist() == pytest.approx([1.0, np.exp(-0.5)])
    assert saturating([-5, 0, 2, 1e9], 2).tolist() == pytest.approx([0, 0, 0.5, 1])
    assert sigmoid([-1e9, 0, 1e9]).tolist() == [0, 0.5, 1]


# --- echo ----------------------------------------------------------------------------------------


def test_the_same_colour_is_at_no_distance():
    assert _family(RED, RED) == pytest.approx(0, abs=1e-12)


def test_a_darker_quieter_member_of_the_family_is_nearer_than_a_lighter_stronger_one():
    darker, lighter = lch(35, 35, 40), lch(69, 89, 40)
    assert _family(darker, RED) < 0.6 * _family(lighter, RED)


def test_going_dark_costs_in_full_where_there_is_no_hue():
    grey, dark = (60.0, 0.0, 0.0), (40.0, 0.0, 0.0)
    assert _family(dark, grey) == pytest.approx(20.0)


def test_black_is_no_member_of_the_red_family():
    assert _family((10.0, 0.0, 0.0), RED) > 2 * _family(lch(30, 31, 40), RED)


def test_closeness_falls_to_0_61_at_the_width_of_an_echo():
    grey = (60.0, 0.0, 0.0)
    near = (60.0 - LIMITS.echo_width, 0.0, 0.0)
    close = closeness(kinship(_labs(near), _labs(grey)), LIMITS)
    assert float(close[0, 0]) == pytest.approx(np.exp(-0.5))


def test_a_quiet_member_of_a_telling_colours_family_is_kin_and_a_grey_is_not():
    kin = family_degree(
        kinship(_labs(lch(33, 31, 40), lch(45, 2, 40)), SUBJECT.target_lab), SUBJECT
    )
    assert kin[0].max() > 0.8
    assert kin[1].max() < 0.1


def test_the_colour_echoed_is_the_one_that_is_named():
    ranked = ranking(findings(SEA, focus=BOAT, rim=SEA[:3]), [sample("red", RED)])
    measures = ranked[0].measures
    assert measures.echo_region == "boat"
    assert measures.echo_delta_e == pytest.approx(0, abs=1e-9)


def test_an_echo_is_reported_in_ciede2000():
    own = lch(50, 58, 41)
    ranked = ranking(findings(SEA, focus=BOAT, rim=SEA[:3]), [sample("red", own)])
    assert ranked[0].measures.echo_delta_e == pytest.approx(float(delta_e_2000(own, RED)))


def test_an_accent_can_be_echoed():
    found = findings(SEA[:3], rim=SEA[:3])
    accent = Accent(RED, 0.01, 0.5, 0.5, 40.0, 0.7, name="red")
    with_accent = replace(found, accents=(accent,))
    measures = ranking(with_accent, [sample("red", RED)])[0].measures
    assert (measures.echo_region, measures.echo_name, measures.echo_share) == (
        "accent",
        "red",
        0.01,
    )


# --- near misses and strays ----------------------------------------------------------------------


def _missed(own, *targets):
    kin = kinship(_labs(own), _labs(*targets))
    ones = np.ones(len(targets))
    return float(near_miss(kin, hue_presence(kin, ones), ones, LIMITS).max())


def test_a_crimson_of_the_same_strength_misses_a_scarlet():
    assert _missed(lch(50, 60, 15), RED) > 0.8


def test_the_same_hue_a_quiet_one_a_dark_one_and_a_far_one_do_not_miss():
    for own in (lch(50, 60, 41), lch(50, 12, 15), lch(12, 60, 15), lch(50, 60, 200)):
        assert _missed(own, RED) < 0.3


def test_a_hue_that_another_colour_of_the_picture_has_does_not_miss():
    crimson = lch(50, 60, 15)
    assert _missed(crimson, RED, lch(40, 50, 15)) < 0.2 < _missed(crimson, RED)


def test_a_strong_hue_that_the_picture_lacks_is_stray_and_a_grey_never_is():
    kin = kinship(_labs(lch(55, 60, 140), (55.0, 1.0, 1.0), RED), SUBJECT.target_lab)
    degree = stray(kin, hue_presence(kin, SUBJECT.target_importance), 42.0)
    assert degree[0] > 0.9
    assert degree[1] == 0
    assert degree[2] < 0.1


# --- pull ----------------------------------------------------------------------------------------


def test_pull_is_the_distance_to_the_arts_mean_in_units_of_the_focus():
    own = _labs((90.0, 0.0, 0.0))
    wanted = float(delta_e_2000(own[0], SUBJECT.mean_lab)) / SUBJECT.focus_strength
    assert pull(own, SUBJECT)[0] == pytest.approx(wanted)


def test_vividness_rises_with_chroma_and_is_a_half_at_the_strength_of_a_strong_colour():
    rising = vividness(_labs(*(lch(50, chroma, 40) for chroma in (0, 20, 40, 80))), SUBJECT, LIMITS)
    assert rising[0] == 0
    assert (np.diff(rising) > 0).all()
    quiet = subject_of(findings([((60.0, 0.0, 0.0), 1.0)]))
    assert vividness(_labs(lch(50, LIMITS.strong_chroma, 0)), quiet, LIMITS)[0] == pytest.approx(
        0.5
    )


def test_only_what_goes_beyond_the_focus_overpowers_or_is_bright():
    assert overpowering(_labs(lch(50, 60, 40)), SUBJECT, LIMITS)[0] == 0
    assert overpowering(_labs(lch(50, 110, 40)), SUBJECT, LIMITS)[0] > 0.8
    dark, light = (SUBJECT.focus_light, 0.0, 0.0), (SUBJECT.focus_light + 16, 0.0, 0.0)
    assert brightness(_labs(dark, light), SUBJECT, LIMITS).tolist() == pytest.approx([0.0, 0.5])


# --- warmth --------------------------------------------------------------------------------------


def _warmth(own, whole):
    nothing = np.zeros(1)
    return float(warmth_mismatch(_labs(own), nothing, subject_of(findings(whole)), LIMITS)[0])


PAPER = [(lch(88, 16, 86), 0.9), (lch(35, 6, 60), 0.1)]
PRINT = [((85.0, 0.0, 0.0), 0.5), ((30.0, 0.0, 0.0), 0.5)]


def test_a_cold_white_mismatches_aged_paper_and_a_cream_a_grey_print():
    cream, cold = lch(93, 13, 88), lch(96, 4, 262)
    assert _warmth(cold, PAPER) > LIMITS.warmth_limit > _warmth(cream, PAPER)
    assert _warmth(cream, PRINT) > LIMITS.warmth_limit > _warmth(cold, PRINT)


def test_a_dark_colour_is_never_a_wrong_white():
    assert _warmth(lch(30, 30, 260), PAPER) == 0


def test_a_light_colour_of_the_picture_is_no_wrong_white():
    pink = lch(86, 14, 10)
    assert _warmth(pink, [(pink, 0.3), ((40.0, 0.0, 0.0), 0.7)]) < 1


def test_a_sky_against_the_warmth_of_the_scene_is_no_paper_white_but_a_sheet_all_round_is():
    sky, land = lch(86, 5, 235), lch(55, 38, 58)
    scene = [(sky, 0.65), (land, 0.35)]
    warm_white, cold_white = lch(95, 5, 85), lch(96, 4, 262)
    under_sky = findings(scene, rim=[(sky, 0.6), (land, 0.4)])
    on_sheet = findings(scene, rim=[(sky, 1.0)])
    for found, better, worse in (
        (under_sky, warm_white, cold_white),
        (on_sheet, cold_white, warm_white),
    ):
        gap = warmth_mismatch(_labs(better, worse), np.zeros(2), subject_of(found), LIMITS)
        assert gap[1] > gap[0] + 4


@pytest.mark.parametrize("turn", [0, 180])
def test_a_picture_without_a_white_asks_for_one_as_warm_as_itself(turn):
    whites = subject_of(findings([(lch(45, 30, 60 + turn), 1.0)])).whites
    assert whites.shown < 0.2
    assert whites.warmth * (1 if turn == 0 else -1) > 0.9
    assert (warm(whites.ab) > warm(PAPER_WHITE_AB)) == (turn == 0)


def test_a_toned_print_asks_for_a_white_of_its_own_tone():
    sepia = subject_of(findings([(lch(70, 15, 78), 0.5), (lch(35, 13, 76), 0.5)]))
    assert np.hypot(*(np.array(sepia.whites.ab) - lch(0, 14, 77)[1:])) < 4


def test_a_black_and_white_print_asks_for_a_neutral_white():
    assert np.hypot(*subject_of(findings(PRINT)).whites.ab) < 1


# --- separation ----------------------------------------------------------------------------------


def test_a_sample_is_not_apart_from_what_it_equals():
    columns = columns_of([sample("same", *SEA[:3])])
    assert separation(columns, SUBJECT).delta_e[0] == pytest.approx(0, abs=1e-9)


def test_separation_tells_lighter_stronger_and_another_hue():
    flat = subject_of(findings([(lch(50, 20, 240), 1.0)]))
    apart = separation(columns_of([sample("s", lch(70, 40, 60))]), flat)
    assert apart.lightness[0] == pytest.approx(20)
    assert apart.chroma[0] == pytest.approx(20)
    assert apart.hue[0] == pytest.approx(2 * np.sqrt(20 * 40), rel=1e-6)  # opposite hues


def test_a_plain_dark_neutral_is_a_foil_and_a_like_grey_or_a_colour_is_not():
    values = foil(_labs((8.0, 0.0, 0.0), (52.0, 0.0, 0.0), lch(8, 40, 30)), SUBJECT)
    assert values[0] > 0.9
    assert values[1] < 0.05
    assert values[2] == 0


def test_a_middle_grey_is_less_plain_than_black_and_white():
    values = plainness(_labs((8.0, 0.0, 0.0), (55.0, 0.0, 0.0), (95.0, 0.0, 0.0)))
    assert values.tolist() == pytest.approx([1.0, MIDDLE_COUNTS, 1.0])


# --- what a sample of several colours does --------------------------------------------------------


def _measured(*colours, found=None):
    found = found or findings(SEA, focus=BOAT, rim=SEA[:3])
    return ranking(found, [sample("own", *colours)])[0].measures


def test_a_part_is_felt_beyond_its_share_and_never_more_than_the_whole():
    columns = columns_of([sample("third", (RED, 1 / 3), (SEA[0][0], 2 / 3)), sample("all", RED)])
    felt = columns.felt(np.array([1.0, 0.0, 1.0]))
    assert felt.tolist() == pytest.approx([np.sqrt(1 / 3), 1.0])


def test_a_third_that_repeats_the_picture_relates_the_sample_to_it_and_is_the_part_told_of():
    foreign = lch(52, 20, 330)
    measures = _measured((foreign, 0.66), (RED, 0.34))
    assert measures.repeated == pytest.approx(0.34)
    assert measures.relation >= 0.5
    assert measures.echo_delta_e == pytest.approx(0, abs=1e-9)
    assert _measured((foreign, 0.9), (RED, 0.1)).relation < 0.5


def test_strangers_in_a_mottled_sample_are_seen():
    stranger = lch(55, 60, 140)
    assert _measured((RED, 0.7), (stranger, 0.3)).stray >= 0.5
    assert _measured((RED, 0.7), (SEA[0][0], 0.3)).stray < 0.1


# --- meaning, relation ----------------------------------------------------------------------------


def test_a_colour_used_sparingly_has_meaning_and_a_large_one_or_a_grey_has_not():
    found = findings([(SEA[0][0], 0.6), (lch(60, 40, 110), 0.39), (RED, 0.01)])
    assert _measured(RED, found=found).meaning > 0.8
    assert _measured(lch(34, 31, 40), found=found).meaning > 0.7
    assert _measured(lch(60, 40, 110), found=found).meaning < 0.05
    assert _measured((60.0, 0.0, 0.0), found=found).meaning < 0.05


def test_a_lamp_repeated_at_its_full_light_in_a_dark_picture_counts_no_more_as_meaning():
    lamp = lch(78, 42, 78)
    found = findings([(lch(20, 15, 268), 0.985), (lamp, 0.015)])
    assert _measured(lamp, found=found).meaning < 0.05
    assert _measured(lch(30, 26, 78), found=found).meaning > 0.5


@pytest.mark.parametrize(
    ("lab", "verdict"),
    [
        ((53.0, 1.0, 4.0), Verdict.BLEND),  # a grey that is nowhere, near the edge in depth
        ((95.0, 0.0, 3.0), Verdict.COMPLEMENT),  # a mat's plain white
        ((8.0, 0.0, 0.0), Verdict.COMPLEMENT),  # plain black
        (lch(50, 19, 330), Verdict.BLEND),  # a greyed violet that is nowhere, near it in depth
        (lch(12, 19, 330), Verdict.CLASH),  # the same, standing clear
        (lch(55, 45, 330), Verdict.CLASH),  # a strong one
        (RED, Verdict.COMPLEMENT),
        (SEA[0][0], Verdict.BLEND),
    ],
)
def test_a_verdict_is_what_the_measures_say_of_relation_and_place(lab, verdict):
    found = findings(SEA, focus=BOAT, rim=SEA[:3])
    assert ranking(found, [sample("own", lab)])[0].verdict is verdict


# --- neighbours ----------------------------------------------------------------------------------


def test_a_meant_step_beats_the_same_colour_and_that_beats_a_seeming_mistake():
    base = lch(45, 15, 240)
    step, same, slip = (68.0, *base[1:]), base, (49.5, *base[1:])
    merit = neighbour_merit(_labs(base), _labs(step, same, slip), HOUSE_RULE)[0]
    assert merit[0] > merit[1] > merit[2]


def test_no_pair_has_more_than_the_best_merit():
    rng = np.random.default_rng(0)
    lab = rng.uniform([0, -60, -60], [100, 60, 60], (80, 3))
    assert neighbour_merit(lab, lab, HOUSE_RULE).max() <= BEST_PAIR


# --- measuring -----------------------------------------------------------------------------------


def _rack(count):
    rng = np.random.default_rng(1)
    return [
        sample(
            f"S{n}",
            *(
                tuple(map(float, lab))
                for lab in rng.uniform([5, -40, -40], [97, 40, 40], (1 + n % 3, 3))
            ),
        )
        for n in range(count)
    ]


def test_a_catalogue_of_several_blocks_is_measured_like_its_parts():
    rack = _rack(2 * BLOCK + 5)
    whole = measure(columns_of(rack), SUBJECT, LIMITS)
    part = measure(columns_of(rack[BLOCK - 3 : BLOCK + 3]), SUBJECT, LIMITS)
    for name in ("echo", "near_miss", "harmony", "separation_delta_e", "echo_target", "kin"):
        assert np.allclose(getattr(whole, name)[BLOCK - 3 : BLOCK + 3], getattr(part, name)), name


def test_black_white_and_colours_past_any_screen_are_measured_in_finite_numbers():
    hostile = [
        sample(f"H{n}", lab)
        for n, lab in enumerate([(0.0, 0.0, 0.0), (100.0, 0.0, 0.0), (50.0, 128.0, -128.0)])
    ]
    measures = measure(columns_of(hostile), SUBJECT, LIMITS)
    for name in ("echo", "pull", "harmony", "warmth", "near_miss", "stray", "separation_delta_e"):
        assert np.isfinite(getattr(measures, name)).all(), name


@pytest.mark.parametrize("lab", [(0.0, 0.0, 0.0), (100.0, 0.0, 0.0), (50.0, 0.0, 0.0)])
def test_a_picture_of_one_flat_colour_can_be_judged(lab):
    ranked = ranking(findings([(lab, 1.0)]), _rack(20))
    assert np.isfinite(ranked.judgement.score).all()
