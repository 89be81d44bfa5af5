"""What an author may write about feeding trees, lawns, beds and pots."""

from typing import Literal

from pydantic import Field

from howto.model.measures import Measures

LEAST_G = 0.0001  # what one tree gets in a dose: less is nothing
Kind = Literal["fruit tree", "lawn", "bed", "pots"]
CropName = Literal["apple", "cooking apple", "pear", "peach", "plum", "cherry", "apricot", "almond"]
TreeForm = Literal["free-standing", "espalier", "fan", "cordon", "step-over"]
Nutrient = Literal["nitrogen", "phosphate", "potash"]
Basis = Literal["trunk", "area", "age", "mature tree"]
Month = Literal[
    "january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november",
    "december",
]  # fmt: skip


class FeedingMeasures(Measures):
    """What is fed, with what, how much of it and when; all but the kind and the label may be left out."""

    kind: Kind = Field(description="fruit tree, lawn, bed or pots")
    # -- the label --
    analysis: str = Field(description="the three numbers of the label, N-P-K, such as 8-4-10")
    label_basis: Literal["oxide", "element"] | None = Field(
        default=None, description="how the label counts P and K: oxide (P2O5, K2O; if left out) or element (P, K)"
    )
    # -- how much --
    area_m2: float | None = Field(default=None, ge=0.1, le=1_000_000, description="area of the lawn or bed")
    nutrient_rate_g_per_m2: float | None = Field(
        default=None, ge=1e-7, le=5_000, description="nutrient wanted on an area in one dose"
    )
    product_rate_g_per_m2: float | None = Field(
        default=None, ge=0.001, le=5_000, description="product put on an area in one dose"
    )
    nutrient: Nutrient | None = Field(
        default=None, description="what the rate is for: nitrogen (if left out), phosphate (P2O5) or potash (K2O)"
    )
    dose_by: Basis | None = Field(
        default=None, description="how a tree's year is reckoned: trunk, area, age or mature tree"
    )
    # -- the tree --
    trunk_mm: float | None = Field(default=None, ge=3, le=2_000, description="trunk across, 300 mm above the ground")
    trunk_girth_mm: float | None = Field(default=None, ge=10, le=6_300, description="tape round the trunk instead")
    stem_clear_mm: float | None = Field(default=None, ge=0, le=5_000, description="bare ring kept from the stem out")
    ring_edge_mm: float | None = Field(default=None, ge=100, le=20_000, description="how far from the stem feed goes")
    canopy_mm: float | None = Field(default=None, ge=100, le=30_000, description="across the spread of the branches")
    shoot_growth_mm: float | None = Field(
        default=None, ge=0, le=5_000, description="length of last year's new shoots, the middle one of ten"
    )
    tree_form: TreeForm | None = Field(default=None, description="free-standing, espalier, fan, cordon or step-over")
    tree_count: int | None = Field(default=None, ge=1, le=100_000, description="how many trees are fed")
    crop: CropName | None = Field(default=None, description="kind of fruit, if it does not follow from the plants")
    tree_age_years: float | None = Field(default=None, ge=0, le=300, description="years since planting")
    bearing: bool | None = Field(default=None, description="yes if it crops; from its age if left out")
    trunk_measured_at_mm: float | None = Field(
        default=None, ge=0, le=3_000, description="how high above the ground the trunk was measured"
    )
    wall: bool | None = Field(
        default=None, description="yes if it stands against a wall, so that half the ring is soil"
    )
    rooting_area_m2: float | None = Field(default=None, ge=0.05, le=1_000, description="soil fed round one tree")
    ground: Literal["bare", "grass"] | None = Field(default=None, description="under the tree: bare soil or grass")
    lawn_nitrogen_g_per_m2: float | None = Field(
        default=None, ge=0, le=60, description="nitrogen the lawn under the tree is given in the year"
    )
    place: Literal["ring", "surface", "planting hole"] | None = Field(
        default=None, description="where it is put: ring, surface or planting hole"
    )
    product_each_g: float | None = Field(
        default=None, ge=LEAST_G, le=50_000, description="product one tree gets in a dose"
    )
    last_year_g: float | None = Field(default=None, ge=1, le=100_000, description="product one tree got all last year")
    scoop_g: float | None = Field(default=None, ge=1, le=20_000, description="product in a level scoop, weighed")
    # -- the lawn --
    grass: str | None = Field(default=None, description="the kind of grass, by its botanical or common name")
    soil_temperature_c: float | None = Field(default=None, ge=-20, le=50, description="of the soil, 100 mm down")
    clippings_left: bool | None = Field(default=None, description="yes if clippings are left on the lawn")
    spreader_width_mm: float | None = Field(default=None, ge=100, le=20_000, description="width one spreader run feeds")
    # -- in water --
    feed_strength_ppm: float | None = Field(
        default=None, ge=0.01, le=5_000, description="nutrient wanted in the mixed feed"
    )
    mix_g_per_l: float | None = Field(default=None, ge=0.00001, le=5_000, description="product weighed into water")
    can_l: float | None = Field(default=None, ge=0.25, le=100, description="size of the watering can")
    sprayer_l: float | None = Field(default=None, ge=0.25, le=1_000, description="size of the sprayer")
    mixed_feed_l: float | None = Field(default=None, ge=0.1, le=100_000, description="mixed feed needed for all of it")
    each_plant_l: float | None = Field(default=None, ge=0.01, le=500, description="mixed feed one plant gets")
    plant_count: int | None = Field(default=None, ge=1, le=1_000_000, description="how many plants or pots are fed")
    drench_l_per_m2: float | None = Field(default=None, ge=0.01, le=100, description="mixed feed on an area")
    concentrate_ml_per_l: float | None = Field(
        default=None, ge=0.01, le=500, description="liquid concentrate for each litre of water, as the label says"
    )
    injector: float | None = Field(
        default=None, ge=1, le=2_000, description="n of a 1:n injector: 100 for one part in a hundred"
    )
    label_mix_g_per_l: float | None = Field(default=None, ge=0.1, le=5_000, description="the most the label allows")
    # -- when --
    doses: int = Field(default=1, ge=1, le=60, description="doses in a year, one in autumn not counted")
    start_month: Month | None = Field(default=None, description="month of the first dose")
    dose_gap_weeks: float | None = Field(default=None, ge=0.5, le=52, description="time between two doses")
    autumn_share_percent: float | None = Field(
        default=None, ge=0, le=100, description="part of a tree's year kept for one dose in autumn"
    )
    # -- the bag --
    label_rate_g_per_m2: float | None = Field(
        default=None, ge=0.1, le=5_000, description="the most product the label allows on an area at one time"
    )
    weed_killer: bool | None = Field(default=None, description="yes if the product also kills weeds or moss")
    bag_kg: float | None = Field(default=None, ge=0.01, le=1_500, description="weight of one bag or tub")
    bag_price: str | None = Field(default=None, description="price of one bag in the crew's money, such as 24.50")
    bag_covers_m2: float | None = Field(default=None, ge=1e-7, le=1e14, description="area one bag is said to feed")

    @property
    def in_water(self) -> bool:
        """Tell whether the feed is mixed in water."""
        return any((self.feed_strength_ppm, self.mix_g_per_l, self.concentrate_ml_per_l))

    @property
    def is_trained(self) -> bool:
        """Tell whether the tree is held to a small frame."""
        return self.tree_form not in {None, "free-standing"}

    @property
    def wanted(self) -> Nutrient:
        """The nutrient that a rate or strength is for: nitrogen where none is written."""
        return self.nutrient or "nitrogen"
