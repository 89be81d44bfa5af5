"""What an author may write about clipping a shape."""

from typing import Literal

from pydantic import Field

from howto.model.measures import Measures

LARGEST_MM = 12_000  # as high as a tower of scaffold; the same standing and finished, so that a mend can be written
Shape = Literal["ball", "dome", "cone", "cube", "cylinder"]


class ClippingMeasures(Measures):
    """A clipped shape: how big it stands, how big it should be, and how it is taken there."""

    shape: Shape = Field(description="ball, dome, cone, cube or cylinder")
    finished_width_mm: float = Field(ge=50, le=LARGEST_MM, description="across the widest part when done")
    standing_width_mm: float = Field(ge=50, le=LARGEST_MM, description="across the widest part before the clip")
    finished_height_mm: float | None = Field(
        default=None, ge=50, le=LARGEST_MM, description="foot to top when done; a ball's is its width"
    )
    standing_height_mm: float | None = Field(
        default=None, ge=50, le=LARGEST_MM, description="foot to top before the clip"
    )
    passes: int = Field(default=1, ge=1, le=12, description="how many times the shape is gone over")
    growth_mm_per_year: float | None = Field(
        default=None, ge=1, le=5_000, description="how much each side grows in a year; the plant's own if left out"
    )
    gauge_every_mm: float | None = Field(
        default=None, ge=10, le=2_000, description="height between two rings on the gauge stick"
    )
    clipping_rate_m2_per_h: float | None = Field(
        default=None, ge=0.1, le=200, description="surface one person clips in an hour"
    )
    day_temperature_c: float | None = Field(
        default=None, ge=-40, le=60, description="warmest hour of the day of the clip"
    )
    first_frost_weeks: float | None = Field(
        default=None, ge=0, le=60, description="time left to the first frost usual here"
    )

    @property
    def height_mm(self) -> float:
        """Height when done, in mm; the width where none is written."""
        return self.finished_height_mm or self.finished_width_mm

    @property
    def standing_mm(self) -> float:
        """Height before the clip, in mm; grown on like the width where none is written."""
        grown = self.standing_width_mm / self.finished_width_mm
        return self.standing_height_mm or self.height_mm * grown

    @property
    def side_mm(self) -> float:
        """What comes off each side, in mm."""
        return (self.standing_width_mm - self.finished_width_mm) / 2

    @property
    def top_mm(self) -> float | None:
        """What comes off the top, in mm; None where the standing height is not written."""
        return None if self.standing_height_mm is None else self.standing_height_mm - self.height_mm
