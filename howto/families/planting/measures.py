"""What an author may write about planting: a tree, a shrub, a row or a bed."""

from typing import Literal

from pydantic import Field

from howto.model.measures import Measures

Work = Literal["tree", "shrub", "bed"]
Stock = Literal["container", "balled", "bare root"]
Drainage = Literal["good", "fair", "poor"]
Pattern = Literal["square", "triangle", "row", "edge"]
Summers = Literal["cool", "warm"]


class PlantingMeasures(Measures):
    """A planting: what goes in, how the hole and the ball stand to each other, and how many plants it takes."""

    work: Work = Field(description="tree, shrub or bed")
    stock: Stock = Field(default="container", description="container, balled (dug with soil) or bare root")
    calliper_mm: float | None = Field(default=None, ge=1, le=500, description="how thick the trunk is")
    calliper_at_mm: float | None = Field(
        default=None, ge=1, le=2_000, description="how far up the trunk that was measured"
    )
    height_mm: float | None = Field(default=None, ge=10, le=20_000, description="how tall the plant is")
    pot_l: float | None = Field(default=None, ge=0.1, le=2_000, description="the pot it came in")
    ball_width_mm: float | None = Field(
        default=None, ge=10, le=6_000, description="width of the root ball, or of the spread roots"
    )
    ball_depth_mm: float | None = Field(default=None, ge=10, le=4_000, description="depth of the ball, or of the roots")
    ball_weight_kg: float | None = Field(default=None, ge=0.01, le=20_000, description="what the ball weighs, if known")
    first_root_mm: float | None = Field(
        default=None, ge=0, le=1_000, description="how far the topmost root lies below the top of the ball"
    )
    hole_width_mm: float | None = Field(default=None, ge=10, le=20_000, description="width of the hole at the top")
    hole_depth_mm: float | None = Field(default=None, ge=1, le=4_000, description="depth of the hole")
    proud_mm: float | None = Field(
        default=None, ge=0, le=4_000, description="how far the topmost root is set above the ground"
    )
    drainage: Drainage = Field(default="good", description="good, fair or poor, by the drainage test")
    loose_soil_mm: float | None = Field(
        default=None, ge=0, le=1_000, description="loose soil left under the ball; none is right"
    )
    soil_over_mm: float | None = Field(
        default=None, ge=0, le=1_000, description="soil put on top of the ball; none is right"
    )
    feed_in_hole: bool | None = Field(default=None, description="yes if fertiliser goes in the hole")
    stands_alone: bool | None = Field(default=None, description="yes if it stands up without a stake")
    stakes: int | None = Field(default=None, ge=0, le=4, description="stakes at each tree")
    tie_height_mm: float | None = Field(default=None, ge=1, le=8_000, description="how far up the tree is tied")
    staked_months: float | None = Field(default=None, ge=0.1, le=120, description="how long the stakes stay")
    mulch_width_mm: float | None = Field(default=None, ge=10, le=10_000, description="width of the mulch ring")
    mulch_depth_mm: float | None = Field(default=None, ge=1, le=1_000, description="depth of the mulch")
    trunk_clear_mm: float | None = Field(default=None, ge=0, le=2_000, description="bare ring kept at the trunk")
    first_water_l: float | None = Field(default=None, ge=0.01, le=5_000, description="water on the day of planting")
    water_each_l: float | None = Field(default=None, ge=0.001, le=5_000, description="water each time afterwards")
    summers: Summers | None = Field(default=None, description="cool or warm: how hot summers are")
    planted_weeks: float | None = Field(default=None, ge=0, le=520, description="weeks since planting")
    pattern: Pattern | None = Field(
        default=None,
        description="square, triangle (all the same distance apart), row, or edge (square, with plants on the edge)",
    )
    spacing_mm: float | None = Field(default=None, ge=10, le=30_000, description="from plant to plant")
    rows: int | None = Field(default=None, ge=1, le=20, description="rows of a row")
    row_gap_mm: float | None = Field(default=None, ge=10, le=30_000, description="from row to row")
    row_length_m: float | None = Field(default=None, ge=0.01, le=100_000, description="length of a row")
    area_m2: float | None = Field(default=None, ge=0.001, le=1_000_000, description="area planted")
    bed_length_m: float | None = Field(default=None, ge=0.01, le=10_000, description="length of the bed")
    bed_width_m: float | None = Field(default=None, ge=0.01, le=1_000, description="width of the bed, up the slope")
    slope_percent: float | None = Field(
        default=None, ge=0, le=200, description="rise over run, where area or width were measured on a plan"
    )
    spare_percent: float | None = Field(default=None, ge=0, le=100, description="plants ordered over, for losses")
    ordered: int | None = Field(default=None, ge=1, le=1_000_000_000_000, description="plants ordered, to check")

    @property
    def layout(self) -> Pattern:
        """How the plants are set out: as written, else a row where a row's length is, else a square grid."""
        if self.pattern is not None:
            return self.pattern
        return "square" if self.row_length_m is None else "row"

    @property
    def row_count(self) -> int:
        """Rows of a row; one where none is written."""
        return self.rows or 1

    @property
    def has_ball(self) -> bool:
        """Whether it comes with soil round its roots."""
        return self.stock != "bare root"

    @property
    def root_to_base_mm(self) -> float | None:
        """From the topmost root to the base of the ball; the whole ball where no root is written."""
        if self.ball_depth_mm is None:
            return None
        left = self.ball_depth_mm - (self.first_root_mm or 0.0)
        return left if left > 0 else None
