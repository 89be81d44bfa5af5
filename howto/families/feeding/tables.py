"""What is known of each kind of fruit and of when feeding starts and stops; each number with who says so."""

from typing import NamedTuple, get_args

from howto.families.feeding.measures import CropName
from howto.families.feeding.references import SPUR_GROWTH, TRUNK, TRUNK_STONE
from howto.model.reference import Reference

INCH_MM = 25.4
POUND_G = 453.59237
POME_G_PER_CM = 0.1 * POUND_G / 2.54  # 17.9: 0.1 lb N an inch of trunk
STONE_G_PER_CM = POUND_G / 8 / 2.54  # 22.3: 1/8 lb N an inch of trunk
CAP_PRODUCT_G = 2.5 * POUND_G  # 1134: 2.5 lb of 10-10-10, see references.TREE_CAP
CAP_FEED_PERCENT = 10.0
MOST_TREE_G = CAP_PRODUCT_G * CAP_FEED_PERCENT / 100  # 113: its N
MATURE_G = POUND_G  # 454: see references.MATURE
MATURE_YEARS = 5.0
SETTLED_YEARS = 10.0  # a trunk that goes on thickening asks for no more; see references.TRUNK
TRAINED_PART = 0.5  # see references.HALF
TRAINED_DOSES = (2, 3)
TRUNK_AT_MM = 300.0  # a foot up; see references.TRUNK
STEM_CLEAR_MM = 300.0
JUST_PAST_MM = 150.0
POUND_PER_1000_SQ_FT = 4.9  # g/m2, as the lawn pages round 4.88
CENTIPEDE_DOSE = 2.45  # half of it
AREA_FEED_PERCENT = 7.0  # N of the feed that the per-area rates are for; from memory
WARM_SOIL_C, SOIL_DEPTH_MM = 18.0, 100.0  # see references.WARM_TURF


class Growth(NamedTuple):
    """How long new shoots should be, in mm."""

    low: float
    high: float


class Fruit(NamedTuple):
    """One kind of fruit: nitrogen by trunk, shoot growth wanted, rates by area and by age."""

    genus: str
    nitrogen_g_per_cm: float
    bearing: Growth | None = None
    young: Growth | None = None
    growth_from: Reference = TRUNK_STONE
    bare_g_per_m2: float | None = None
    grass_g_per_m2: float | None = None
    full_g: float | None = None  # product for a grown tree, of `full_percent` N
    full_percent: float = 8.0

    @property
    def trunk_from(self) -> Reference:
        """Who gives the nitrogen by trunk."""
        return TRUNK if self.nitrogen_g_per_cm == POME_G_PER_CM else TRUNK_STONE


def _inches(low: float, high: float) -> Growth:
    return Growth(low * INCH_MM, high * INCH_MM)


_PLUM = Fruit(
    "Prunus domestica", STONE_G_PER_CM, _inches(10, 14), None, SPUR_GROWTH, 140, 140, full_g=2000, full_percent=9.0
)
# Shoot growth: Colorado State University Extension, PlantTalk 1216, in inches; plum and cherry: National Gardening
# Association. Per area: Royal Horticultural Society. Per age: see references.PER_AGE.
FRUITS: dict[CropName, Fruit] = {
    "apple": Fruit(
        "Malus", POME_G_PER_CM, _inches(12, 24), _inches(24, 36), bare_g_per_m2=100, grass_g_per_m2=140, full_g=2000
    ),
    "cooking apple": Fruit(
        "", POME_G_PER_CM, _inches(12, 24), _inches(24, 36), bare_g_per_m2=150, grass_g_per_m2=210, full_g=2000
    ),
    "pear": Fruit(
        "Pyrus", POME_G_PER_CM, _inches(6, 12), _inches(12, 26), bare_g_per_m2=140, grass_g_per_m2=140, full_g=2000
    ),
    "peach": Fruit(
        "Prunus persica", STONE_G_PER_CM, _inches(10, 18), _inches(16, 24), bare_g_per_m2=140, grass_g_per_m2=140
    ),
    "plum": _PLUM,
    "cherry": _PLUM._replace(genus="Prunus avium"),
    "apricot": Fruit("Prunus armeniaca", STONE_G_PER_CM),
    "almond": Fruit("Prunus dulcis", STONE_G_PER_CM, full_g=2000, full_percent=9.0),
}
ALSO = {"prunus cerasus": "cherry"}  # botanical names that are fed like another
CROP_NAMES: tuple[CropName, ...] = get_args(CropName)

# Month and day of the first dose in the north where none is written; see references.USUAL_DATES and COOL_TURF.
STARTS = {"fruit tree": (3, 1), "bed": (3, 1), "pots": (4, 1), "cool": (4, 20), "warm": (5, 1)}
GAP_WEEKS = {"fruit tree": 6.0, "bed": 6.0, "pots": 2.0, "cool": 6.0, "warm": 7.0}
AUTUMN = (10, 1)  # north; see references.AUTUMN_MONTH
CUT_OFFS = {"fruit tree": (7, 1), "warm": (8, 15)}  # north; see references.TREE_CUT_OFF and WARM_TURF
