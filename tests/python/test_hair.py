"""Hair and head against NumPy, SciPy, shapely and plain integration; figures of others with their source."""

import math

import numpy as np
import pytest
from scipy import integrate, special, stats

from foilwork import FoilworkError
from foilwork.colour import swatch
from foilwork.hair import (
    Band,
    BandedStrand,
    HairFacts,
    by_caliper,
    calibrated,
    fibre_density,
    grown,
    growth,
    hair_cut,
    weeks_to_grow,
    white_share,
)
from foilwork.head import (
    Gradient,
    HeadLook,
    Layout,
    OutlinePart,
    OverDirection,
    Placed,
    Profile,
    Region,
    Template,
    by_hand,
    choose_technique,
    demand,
    film,
    hair_by_use,
    level_along,
    line_shows_after,
    lowlights,
    partition,
    product_class,
    profile,
    read_head,
    read_outline,
    service_class,
    shadow_steps,
    step_needs,
    take_up,
)


def test_mass_is_hairs_times_fibre_times_length() -> None:
    facts = HairFacts(scalp_cm2=500, hairs_per_cm2=200, diameter_um=70)
    tress = facts.part(25)
    area_cm2 = math.pi / 4 * (70e-4) ** 2
    assert tress.hairs.best == pytest.approx(25_000)
    assert tress.mass_g(20).best == pytest.approx(25_000 * area_cm2 * 20 * fibre_density().best)
    # A round hair of 70 um: the European mean ellipse, 1.41 to 1, has a longer way around.
    surface = 25_000 * 20 * tress.circumference_mm.best / 10
    assert tress.surface_cm2(20).best == pytest.approx(surface)


def test_density_spreads_between_people_as_a_log_normal() -> None:
    """211 hairs/cm2 with a variation of 0.26 (J. Soc. Cosmet. Chem. 28(5):222): 80 of 100 by SciPy's distribution."""
    density = HairFacts().head().hairs_per_cm2
    sigma = math.sqrt(math.log1p(0.26**2))
    low, high = stats.lognorm(sigma, scale=211).interval(0.8)
    assert (density.low, density.high) == pytest.approx((low, high), rel=1e-9)


@pytest.mark.parametrize(("minor", "major"), [(70.0, 70.0), (60.7, 85.6), (56.8, 94.3)])
def test_a_cut_is_an_ellipse(minor: float, major: float) -> None:
    area, around = hair_cut(minor, major)
    assert area == pytest.approx(math.pi * minor * major / 4)
    eccentricity = 1 - (minor / major) ** 2
    assert around == pytest.approx(2 * major / 1000 * special.ellipe(eccentricity), rel=1e-7)


def test_a_camera_reads_more_than_a_caliper() -> None:
    """108.78 um by camera is 76.9 um by caliper (Arch. Aesthetic Plast. Surg.)."""
    assert by_caliper(108.78, "scalp-camera") == pytest.approx(76.9, abs=0.5)


def test_weeks_and_centimetres() -> None:
    """0.37 mm a day (Barth 1986): 8 weeks are 2.07 cm."""
    assert grown(8).best == pytest.approx(0.037 * 56)
    assert weeks_to_grow(grown(8).best, growth().best).best == pytest.approx(8)


@pytest.mark.parametrize(("white", "counted"), [(30, 100), (1, 20), (0, 50), (50, 50)])
def test_one_count_has_wilsons_interval(white: int, counted: int) -> None:
    found = white_share([("top", 100, white, counted)])
    assert found is not None
    wilson = stats.binomtest(white, counted).proportion_ci(0.8, method="wilson")
    assert found.white_percent.low == pytest.approx(100 * wilson.low, abs=1e-6)
    assert found.white_percent.high == pytest.approx(100 * wilson.high, abs=1e-6)


def test_a_use_and_a_prediction_agree_by_their_widths() -> None:
    """Inverse-variance weights of two normals in the logarithm, by NumPy."""
    predicted, used = np.log([60.0, 100.0, 170.0]), np.log([70 / 1.2, 70.0, 70 * 1.2])
    weights = np.array([1 / (bounds[2] - bounds[0]) ** 2 for bounds in (predicted, used)])
    want = np.exp(np.average([predicted[1], used[1]], weights=weights))
    assert calibrated((60, 100, 170), 70).best == pytest.approx(want)


def test_a_use_narrows_the_hair_of_the_head_as_bayes_rule_does() -> None:
    """Bayes' rule on a grid of mass and take-up, summed up in NumPy, gives the same 10th, 50th and 90th percentile."""
    alone = HairFacts(scalp_cm2=580, hairs_per_cm2=200).head().mass_per_length_g_per_cm
    takes = take_up("block", lightens=False)
    bounds = {
        "mass": (alone.low, alone.best, alone.high),
        "take": (takes.low, takes.best, takes.high),
        "repeat": (1 / 1.2, 1.0, 1.2),
    }
    sd = {name: math.log(high / low) / (2 * stats.norm.ppf(0.9)) for name, (low, _, high) in bounds.items()}
    on_hair_cm, used_g = 0.3 * 20, 50.0
    mass, take = (np.log(bounds[name][1]) + np.linspace(-4, 4, 1601) * sd[name] for name in ("mass", "take"))
    each = mass[:, None] + take[None, :] + math.log(on_hair_cm)
    chance = stats.norm.pdf(math.log(used_g), each, sd["repeat"]) * stats.norm.pdf(take, take[800], sd["take"])
    below = np.cumsum(chance.sum(axis=1) * stats.norm.pdf(mass, mass[800], sd["mass"]))
    want = np.exp(np.interp([0.1, 0.5, 0.9], below / below[-1], mass))
    by_use = hair_by_use(used_g, "block", 20, share_percent=30, profile=Profile(100, 0, 0))
    assert by_use is not None and by_use.best == pytest.approx(
        used_g / on_hair_cm / take_up("block", lightens=False).best
    )
    known = HairFacts(scalp_cm2=580, hairs_per_cm2=200, by_use_g_per_cm=by_use).head().mass_per_length_g_per_cm
    assert list(known) == pytest.approx(want, rel=4e-3)
    assert known.high / known.low < 0.95 * alone.high / alone.low


def test_a_use_at_the_scalp_is_less_its_film() -> None:
    """Worked out with plain numbers; a use that may all be film says nothing of the hair."""
    through, (_, middle, _) = Profile(100, 0, 0), film()
    on_scalp = hair_by_use(100, "regrowth", 3, share_percent=100, profile=through, scalp_cm2=500)
    assert on_scalp is not None
    assert on_scalp.best == pytest.approx((100 - 500 * middle) / 3 / take_up("regrowth", lightens=False).best)
    assert hair_by_use(45, "regrowth", 3, share_percent=100, profile=through, scalp_cm2=500) is None


def test_a_strand_has_no_gap() -> None:
    strand = BandedStrand(30, [Band(0, 4, 5), Band(4, 30, 8, artificial=True)])
    assert (strand.regrowth_cm, strand.overlap_cm(2, 10), strand.level_at(31)) == (4, 6, None)
    with pytest.raises(FoilworkError, match="a gap without a colour"):
        BandedStrand(30, [Band(0, 4, 5), Band(5, 30, 8)])


def test_facts_are_checked() -> None:
    with pytest.raises(FoilworkError, match=r"girth of the ponytail: 0\.01 cm is on no head"):
        HairFacts(ponytail_girth_cm=0.01)
    with pytest.raises(FoilworkError, match="density and hairs_per_cm2 are both given"):
        HairFacts(density="high", hairs_per_cm2=200)
    assert HairFacts(ponytail_girth_cm=9).part().mass_g(20).best == pytest.approx(
        HairFacts(ponytail_girth_cm=(9, 9, 9)).part(100).mass_g(20).best
    )


# --- the head -------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("width", "pick", "gap", "depth"), [(80, 3, 3, 6), (77, 2.5, 4, 3), (120, 5, 1.5, 2)])
def test_a_weave_covers_what_its_boxes_cover(width: float, pick: float, gap: float, depth: float) -> None:
    """Whole picks as boxes in the subsection: their area by shapely."""
    shapely = pytest.importorskip("shapely")
    thick = 6.0
    lefts = np.arange(0, width, pick + gap)
    boxes = [shapely.box(left, 0, left + pick, depth) for left in lefts if left + pick <= width + 1e-9]
    area = shapely.union_all(boxes).area
    foils = Layout(subsection_mm=thick, pick_mm=pick, gap_mm=gap, depth_mm=depth).on(width / 10, 6)
    assert foils.picks.best == len(boxes)
    assert foils.lifted_cm2.best == pytest.approx(area / 100)
    assert foils.share_of_subsection_percent.best == pytest.approx(100 * area / (width * thick))


def test_sizes_that_do_not_fit_name_both_arguments() -> None:
    with pytest.raises(FoilworkError, match="foil_width_cm 12 cm is wider than width_cm 8 cm"):
        Layout(foil_width_cm=12).on(8, 6)
    with pytest.raises(FoilworkError, match="gap_mm stands without pick_mm"):
        Layout(gap_mm=3)
    # Back to back every row is taken; by hand a quarter off.
    assert Layout(left_between_mm=0).on(8, 6).share_of_panel_percent.best == 100
    assert list(Layout(subsection_mm=by_hand(4)).subsection_mm) == pytest.approx([3, 4, 5])


def test_painted_length_is_the_integral_of_what_is_covered() -> None:
    combed = Profile(60, start_cm=5, transition_cm=4)
    for length in (4.0, 6.5, 9.0, 30.0):
        area, _ = integrate.quad(lambda at: combed.covered_at(at).best / 100, 0, length, points=[5, 9], limit=200)
        assert combed.painted_cm(length).best == pytest.approx(area, abs=1e-7)


def test_demand_is_mass_times_take_up() -> None:
    facts = HairFacts(scalp_cm2=500, hairs_per_cm2=200, diameter_um=70)
    slices = demand(facts, "slice", 20, share_percent=20, lightens=True, foils=10)
    painted = profile("slice", 20).painted_cm(20).best
    hair = facts.part(20).mass_per_length_g_per_cm.best * painted
    assert slices.hair_g.best == pytest.approx(hair)
    assert slices.mix_g.best == pytest.approx(hair * take_up("slice", lightens=True).best)
    assert slices.mix_per_foil_g is not None
    assert slices.mix_per_foil_g.best == pytest.approx(slices.mix_g.best / 10)


def test_the_trades_100_g_lie_within() -> None:
    """100 g of mix per application is the usual exposure figure for permanent colour (from memory, unverified)."""
    mix = demand(HairFacts(), "block", 20).mix_g
    assert mix.low < 100 < mix.high


@pytest.mark.parametrize("radius", [None, 9.0, 7.5])
def test_over_direction_is_the_distance_of_two_points(radius: float | None) -> None:
    held = OverDirection(3, 6, radius)
    for behind in (0.0, 2.0, 5.0):
        if radius is None:
            root = np.array([behind, 0.0])
        else:
            root = np.array(
                [
                    integrate.quad(lambda s: math.cos(s / radius), 0, behind)[0],
                    integrate.quad(lambda s: math.sin(s / radius), 0, behind)[0],
                ]
            )
        assert held.start_cm(behind) == pytest.approx(np.linalg.norm(root + np.array([3.0, 6.0])), rel=1e-9)


def test_light_adds_up_in_reflectance() -> None:
    """60 % of level 9 beside 40 % of level 5: Y is the mean, and L* follows by the formula of CIE."""
    rest, light = swatch(5), swatch(9, lightened_from=5)
    placed = [Placed("top", "top", 60, rest=rest, light=light)]
    look = read_head(placed, rest, "even").regions[2]

    def y(lightness: float) -> float:
        return float(((lightness + 16) / 116) ** 3)

    mean = 0.4 * y(rest.lightness.best) + 0.6 * y(light.lightness.best)
    assert look.lab_l.best == pytest.approx(116 * mean ** (1 / 3) - 16, abs=1e-6)
    assert level_along(Profile(100, 0, 0), 5, 5, 3)[3][1].best == pytest.approx(5, abs=0.02)


def test_foils_follow_the_hair_that_is_taken() -> None:
    blend = Gradient(
        start_outline_cm=1, start_interior_cm=5, share_outline_percent=70, share_interior_percent=20, length_cm=30
    )
    template = Template()
    laid = blend.lay(60)
    hair = np.array([share.best for share in template.hair_percent()])
    inward = np.array([region.inward_percent for region in template.regions]) / 100
    taken = hair * (0.7 + (0.2 - 0.7) * inward)
    assert [region.of_head_percent for region in laid] == pytest.approx(taken)
    assert [region.start_cm for region in laid] == pytest.approx(1 + 4 * inward)
    assert np.abs([region.foils for region in laid] - 60 * taken / taken.sum()).max() < 1
    with pytest.raises(FoilworkError, match="`start_outline_cm` 9 cm is further"):
        Gradient(
            start_outline_cm=9, start_interior_cm=5, share_outline_percent=70, share_interior_percent=20, length_cm=30
        )


def test_sections_are_a_partition() -> None:
    with pytest.raises(FoilworkError, match='"halo" and "veil" overlap'):
        partition([("halo", "crown", 60), ("veil", "crown", 50)])
    with pytest.raises(FoilworkError, match="belongs to no section"):
        partition([("halo", "crown", 60)], rest="refused")


def test_the_head_reads_as_asked_or_says_what_to_change() -> None:
    rest, light = swatch(5), swatch(9, lightened_from=5)

    def read(outline: float, inside: float) -> HeadLook:
        placed = [
            Placed(
                "rim" if region.outline else "inside",
                region.name,
                outline if region.outline else inside,
                rest=rest,
                light=light,
            )
            for region in Template().regions
        ]
        return read_head(placed, rest, "bright-outline")

    bright, dark = read(60, 20), read(10, 40)
    assert bright.as_wanted and bright.change is None
    change = dark.change
    assert change is not None and change.section == "rim" and change.enough
    assert read(change.wanted_percent + 0.01, 40).as_wanted
    assert "front hairline" in bright.svg("map")
    # By name of the section and its share, on the map and where a notebook shows it.
    assert ">rim, 60 % light<" in bright._repr_svg_() and ">inside, 20 % light<" in bright._repr_svg_()
    assert bright.placed[0].section == "rim"


def test_an_outline_is_solid_or_soft() -> None:
    # By hand: half of the outline's hair at 80 %, half at 30 %: 55 % are light, which is neither.
    strand = profile("slice", 30)
    parts = [
        OutlinePart(name, hair_percent=4, taken_percent=share, profile=strand) for name, share in (("a", 80), ("b", 30))
    ]
    look = read_outline(parts, "solid")
    assert look is not None and look.light_percent.best == pytest.approx(55) and look.reads is None
    # 40 points more in one of two halves are 20 more in all: 75.
    assert [(change.section, change.wanted_percent) for change in look.changes] == [("b", 70.0)]
    soft = read_outline(parts, "soft")
    assert soft is not None and [change.section for change in soft.changes] == ["a"]
    line = read_outline([OutlinePart("a", hair_percent=4, taken_percent=30, profile=Profile(100, 5, 0.2))], "soft")
    assert line is not None and not line.as_wanted and "blend its start" in line.changes[0].advice
    assert read_outline([]) is None


def test_decisions_have_reasons() -> None:
    found = product_class(6, 6, white_percent=60)
    assert (found.product, found.before) == ("permanent", ["pre-soften"])
    assert {other.product for other in found.rejected} >= {"lightener", "high-lift"}
    assert [service_class([("weave", share)]) for share in (20, 60, 90)] == ["partial", "half", "full"]
    assert line_shows_after(profile("weave", 30), 1.0).best < line_shows_after(profile("freehand", 30), 1.0).best
    with pytest.raises(FoilworkError, match="darker than"):
        lowlights(9, 8, lowlight_level=5, natural_level=6, per_foil_percent=5, light_foils=12)


def test_errors_name_the_arguments_and_the_bound_that_is_off() -> None:
    with pytest.raises(FoilworkError, match=r"^`lowlight_level` level 5 is darker than `natural` level 6"):
        lowlights(9, 8, lowlight_level=5, natural_level=6)
    with pytest.raises(FoilworkError, match=r"^density_percent -5 is out of range"):
        Template([Region("all", 100, density_percent=(-5, 100, 120))])
    # Without foils the share is all that is known.
    depth = lowlights(9, 8, lowlight_level=6, natural_level=6)
    assert depth.foils is None and depth.light_foils_between is None and depth.share_percent.best > 0


def test_the_technique_is_the_plainest_that_does_it() -> None:
    """Common practice: a line that may show after two weeks is a weave; a soft start for months is combed."""
    quick = choose_technique("line", 2, length_cm=30, taken_percent=20)
    combed = choose_technique("diffuse", 12, length_cm=40, taken_percent=50)
    assert (quick.technique, combed.technique) == ("weave", "back-comb")
    assert {other.technique for other in combed.rejected} == {"weave", "slice", "block", "freehand", "freehand-in-foil"}
    assert combed.line_shows_after_weeks is not None and combed.line_shows_after_weeks.best > 12
    assert choose_technique("diffuse", 50, length_cm=30).technique is None
    with pytest.raises(FoilworkError, match="softness"):
        choose_technique("sharp", 3, length_cm=30)  # type: ignore[arg-type]


def test_steps_before_and_a_shadow_in_steps() -> None:
    assert [step_needs(step).then for step in product_class(8, 5, lightened=True).before] == ["blot"]
    light = shadow_steps(4, 10, 3)
    assert np.diff([step.level for step in light] + [10]).max() <= 2
    assert [step.from_cm for step in light[1:]] == [step.to_cm for step in light[:-1]]
    assert (light[0].from_cm, light[-1].to_cm) == (0, 3)
