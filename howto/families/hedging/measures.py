"""What an author may write about a hedge: thickened while young, trimmed, or renovated."""

from typing import Literal

from pydantic import Field

from howto.model.measures import Measures

Job = Literal["thicken", "trim", "renovate"]
Country = Literal[
    "england", "wales", "scotland", "northern ireland", "ireland", "australia", "new zealand", "united states",
    "elsewhere",
]  # fmt: skip
ROW_GAP_MM = 400.0  # UK Government, Countryside Stewardship, BN11: rows 400 mm apart


class HedgingMeasures(Measures):
    """A hedge: the size it is kept at, how it stands now, and how its plants stand."""

    finished_height_mm: float = Field(ge=10, le=10_000, description="the height the hedge is kept at in the end")
    job: Job = Field(default="trim", description="thicken (a young hedge), trim (an established one) or renovate")
    standing_height_mm: float | None = Field(default=None, ge=100, le=15_000, description="height before the cut")
    cut_height_mm: float | None = Field(
        default=None, ge=10, le=15_000, description="height of this cut; the finished height if left out"
    )
    last_cut_height_mm: float | None = Field(
        default=None, ge=10, le=15_000, description="height of the cut before this one"
    )
    base_width_mm: float | None = Field(default=None, ge=15, le=5_000, description="width at the foot when cut")
    top_width_mm: float | None = Field(default=None, ge=10, le=5_000, description="width at the top when cut")
    standing_base_width_mm: float | None = Field(
        default=None, ge=50, le=8_000, description="width at the foot before the cut"
    )
    standing_top_width_mm: float | None = Field(
        default=None, ge=50, le=8_000, description="width at the top before the cut"
    )
    year: int | None = Field(default=None, ge=1, le=30, description="1 in the year of planting, 2 in the next")
    cut_back_percent: float | None = Field(
        default=None, ge=0, lt=100, description="share of the new growth that each cut takes back: 50 % or 1/2"
    )
    cuts_a_year: int | None = Field(default=None, ge=1, le=12, description="how many times a year it is cut")
    shoots: int | None = Field(default=None, ge=1, le=500, description="shoots on a plant before the first cut")
    growth_mm_per_year: float | None = Field(
        default=None, ge=0.01, le=5_000, description="how much the top grows in a year; the plant's own if left out"
    )
    side_growth_mm_per_year: float | None = Field(
        default=None, ge=0.01, le=5_000, description="how much each side grows in a year; half of the top's if left out"
    )
    spacing_mm: float | None = Field(default=None, ge=10, le=5_000, description="from plant to plant along a row")
    rows: int | None = Field(default=None, ge=1, le=3, description="1 for a single row, 2 for a staggered double one")
    row_gap_mm: float | None = Field(default=None, ge=10, le=2_000, description="from row to row")
    hedge_length_m: float | None = Field(default=None, ge=0.01, le=100_000, description="length of the hedge")
    plant_width_mm: float | None = Field(default=None, ge=1, le=5_000, description="how wide each plant is now")
    faces: int | None = Field(default=None, ge=1, le=2, description="faces that are cut hard this year: 1 or 2")
    inside_face_mm: float | None = Field(
        default=None, ge=0, le=2_000, description="how far inside the wanted face a renovation cuts"
    )
    green_depth_mm: float | None = Field(
        default=None, ge=0, le=2_000, description="how deep the green leaf goes in from the face"
    )
    farm_hedge: bool | None = Field(default=None, description="yes if the hedge stands on farmland")
    country: Country | None = Field(default=None, description="the country whose nesting law holds here")

    @property
    def cut_mm(self) -> float:
        """Height of this cut, in mm."""
        return self.cut_height_mm if self.cut_height_mm is not None else self.finished_height_mm

    @property
    def row_count(self) -> int:
        """Rows of plants; one where none is written."""
        return self.rows or 1

    @property
    def gap_between_rows_mm(self) -> float:
        """Distance from row to row; 400 mm where none is written, and 0 for a single row."""
        return 0.0 if self.row_count == 1 else self.row_gap_mm or ROW_GAP_MM
