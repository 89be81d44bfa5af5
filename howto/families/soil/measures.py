"""What an author may write about readying and covering soil."""

from typing import Literal

from pydantic import Field

from howto.model.measures import Measures

Kind = Literal["dig in", "mulch", "top-dress", "new bed"]
USUAL_HOLE_MM = 300.0  # University of California Statewide IPM Program, Percolation test


class SoilMeasures(Measures):
    """A bed or lawn: how much material goes on it, how deep, and what its soil is like."""

    work: Kind = Field(description="dig in, mulch, top-dress or new bed")
    area_m2: float = Field(ge=0.001, le=100_000, description="area covered")
    depth_mm: float = Field(ge=0.1, le=1_000, description="depth of the layer that is wanted")
    material: str = Field(
        default="compost", min_length=1, max_length=40, description="what is spread: compost, bark, soil"
    )
    settling_percent: float | None = Field(
        default=None, ge=0, le=60, description="how much a loose layer sinks; so much more is spread to make up for it"
    )
    dig_depth_mm: float | None = Field(default=None, ge=1, le=3_000, description="how deep it is mixed in")
    old_layer_mm: float | None = Field(default=None, ge=0, le=1_000, description="depth of the mulch that lies there")
    volume_m3: float | None = Field(
        default=None, ge=1e-7, le=1_000_000, description="volume ordered, to check against the sum"
    )
    bag_l: float | None = Field(default=None, ge=1, le=2_000, description="litres in a bag")
    bags: int | None = Field(default=None, ge=1, le=1_000_000_000, description="bags ordered, to check against the sum")
    barrow_l: float | None = Field(default=None, ge=1, le=1_000, description="litres in a barrow")
    load_m3: float | None = Field(default=None, ge=0.00001, le=100, description="what the trailer or truck holds")
    payload_kg: float | None = Field(default=None, ge=0.1, le=50_000, description="what the trailer or truck may carry")
    density_kg_per_m3: float | None = Field(
        default=None, ge=1, le=3_000, description="weight of the material, from the supplier's docket"
    )
    trunk_clear_mm: float | None = Field(default=None, ge=0, le=3_000, description="bare ring kept round stems")
    over_the_ball_mm: float | None = Field(default=None, ge=0, le=500, description="mulch left over a new root ball")
    ph: float | None = Field(default=None, ge=0, le=14, description="pH by a soil test")
    soil_test: bool | None = Field(default=None, description="yes if a soil test was made")
    lime: bool | None = Field(default=None, description="yes if lime goes on")
    gypsum: bool | None = Field(default=None, description="yes if gypsum goes on")
    sodic: bool | None = Field(default=None, description="yes if the test calls the soil sodic")
    test_hole_mm: float | None = Field(
        default=None, ge=50, le=2_000, description="depth of the hole for the drainage test; 300 mm if left out"
    )
    drained_mm: float | None = Field(default=None, ge=0, le=2_000, description="how far the water fell in the test")
    drained_in_hours: float | None = Field(
        default=None, ge=0.01, le=24, description="how long that took; a day shows enough"
    )
    wet_or_frozen: bool | None = Field(default=None, description="yes if the ground is soaked or frozen")

    @property
    def settles(self) -> float:
        """The part of the spread depth that sinks, 0 to 0.6; nothing where nothing is written."""
        return (self.settling_percent or 0.0) / 100

    @property
    def is_compost(self) -> bool:
        """Whether what is spread is compost of some kind."""
        return "compost" in self.material.casefold()

    @property
    def is_dug_in(self) -> bool:
        """Whether what is spread is mixed into the soil."""
        return self.work in {"dig in", "new bed"}

    @property
    def hole_mm(self) -> float:
        """Depth of the test hole; the usual one where none is written."""
        return self.test_hole_mm or USUAL_HOLE_MM
