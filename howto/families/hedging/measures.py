"""What an author may write about a hedge: thickened while young, trimmed, or renovated."""

from typing import Any, Literal

from pydantic import Field

from howto.model.measures import Measures

Job = Literal["thicken", "trim", "renovate"]
Country = Literal[
    "england", "wales", "scotland", "northern ireland", "ireland", "australia", "new zealand", "united states",
    "elsewhere",
]  # fmt: skip
WIDEST_MM = 5_000.0  # ours: the widest hedge that may be written
ROW_GAP_MM = 400.0  # from row to row; see references.GRANT
INSIDE_MM = 150.0  # how far inside the wanted face a renovation cuts; see references.RENOVATION


def _may(low: float, high: float, about: str) -> Any:
    """Return a measure that may be left out."""
    return Field(default=None, ge=low, le=high, description=about)


class HedgingMeasures(Measures):
    """A hedge: the size it is kept at, how it stands now, and how its plants stand."""

    finished_height_mm: float = Field(ge=10, le=10_000, description="the height the hedge is kept at in the end")
    job: Job = Field(default="trim", description="thicken (a young hedge), trim (an established one) or renovate")
    standing_height_mm: float | None = _may(100, 15_000, "height before the cut")
    cut_height_mm: float | None = _may(10, 15_000, "height of this cut; the finished height if left out")
    last_cut_height_mm: float | None = _may(10, 15_000, "height of the cut before this one")
    base_width_mm: float | None = _may(15, WIDEST_MM, "width at the foot when cut")
    top_width_mm: float | None = _may(10, WIDEST_MM, "width at the top when cut")
    standing_base_width_mm: float | None = _may(50, 8_000, "width at the foot before the cut")
    standing_top_width_mm: float | None = _may(50, 8_000, "width at the top before the cut")
    year: int | None = _may(1, 30, "1 in the year of planting, 2 in the next")
    cut_back_percent: float | None = Field(
        default=None, ge=0, lt=100, description="share of the new growth that each cut takes back: 50 % or 1/2"
    )
    cuts_a_year: int | None = _may(1, 12, "how many times a year it is cut")
    shoots: int | None = _may(1, 500, "shoots on a plant before the first cut")
    growth_mm_per_year: float | None = _may(0.01, 5_000, "what the top grows in a year; the plant's own if left out")
    side_growth_mm_per_year: float | None = _may(0.01, 5_000, "what each side grows; half of the top's if left out")
    spacing_mm: float | None = _may(10, 5_000, "from plant to plant along a row")
    rows: int | None = _may(1, 3, "1 for a single row, 2 for a staggered double one")
    row_gap_mm: float | None = _may(10, 2_000, "from row to row")
    hedge_length_m: float | None = _may(0.01, 100_000, "length of the hedge")
    plant_width_mm: float | None = _may(1, 5_000, "how wide each plant is now")
    faces: int | None = _may(1, 2, "faces that are cut hard this year: 1 or 2")
    inside_face_mm: float | None = _may(0, 2_000, "how far inside the wanted face a renovation cuts")
    green_depth_mm: float | None = _may(0, 2_000, "how deep the green leaf goes in from the face")
    farm_hedge: bool | None = Field(default=None, description="yes if the hedge stands on farmland")
    country: Country | None = Field(default=None, description="the country whose nesting law holds here")

    @property
    def cut_mm(self) -> float:
        """Height of this cut, in mm."""
        return self.cut_height_mm if self.cut_height_mm is not None else self.finished_height_mm

    @property
    def inside_mm(self) -> float:
        """How far inside the wanted face a renovation cuts, the usual depth where none is written."""
        return INSIDE_MM if self.inside_face_mm is None else self.inside_face_mm

    @property
    def row_count(self) -> int:
        """Rows of plants; one where none is written."""
        return self.rows or 1

    @property
    def gap_between_rows_mm(self) -> float:
        """Distance from row to row, the usual one where none is written; 0 for a single row."""
        return 0.0 if self.row_count == 1 else self.row_gap_mm or ROW_GAP_MM
