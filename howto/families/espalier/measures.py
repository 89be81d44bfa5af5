"""What an author may write about an espalier."""

from typing import Literal

from pydantic import Field

from howto.model.measures import Measures

Job = Literal["wiring", "planting", "training", "summer pruning", "winter thinning"]
Lay = Literal["1x19", "7x7", "7x19"]
Steel = Literal["316 stainless", "304 stainless", "galvanised"]
Fruit = Literal["apple", "pear", "stone fruit"]
Rootstock = Literal["M26", "MM106", "MM111", "quince A"]


class EspalierMeasures(Measures):
    """A frame on wires: how it is laid out, what its wires carry, and how it is trained and pruned."""

    job: Job = Field(
        default="training", description="wiring, planting, training, summer pruning or winter thinning of old spurs"
    )
    tiers: int = Field(ge=1, le=12, description="levels of arms, a wire each")
    # -- the wall and its wires --
    wall_length_m: float | None = Field(
        default=None, ge=0.5, le=20_000, description="how far each wire runs along the wall"
    )
    support: Literal["wall", "posts"] = Field(default="wall", description="wall or posts")
    first_wire_mm: float | None = Field(default=None, ge=50, le=3000, description="lowest wire above the ground")
    tier_spacing_mm: float | None = Field(default=None, ge=50, le=2000, description="from each wire to the next")
    eye_spacing_mm: float | None = Field(
        default=None, ge=10, le=100_000, description="the most between two eyes, or between two posts"
    )
    off_wall_mm: float | None = Field(default=None, ge=0, le=1000, description="from the wall to the wire")
    stem_off_wall_mm: float | None = Field(default=None, ge=0, le=2000, description="from the wall to the stem")
    post_depth_mm: float | None = Field(default=None, ge=0, le=3000, description="how deep the posts stand")
    wire: Steel | None = Field(default=None, description="316 stainless, 304 stainless or galvanised")
    lay: Lay | None = Field(default=None, description="1x19, 7x7 or 7x19: strands by wires")
    wire_diameter_mm: float | None = Field(default=None, ge=0.5, le=20, description="across the whole wire")
    breaking_load_n: float | None = Field(
        default=None, ge=10, le=1_000_000, description="the maker's; from diameter and lay if left out"
    )
    tension_n: float | None = Field(default=None, ge=1, le=5_000_000, description="pull the wire is set to")
    stretch_mm_per_m: float | None = Field(
        default=None, gt=0, le=20, description="how much it grew when it was tightened"
    )
    load_kg_per_m: float | None = Field(
        default=None, ge=0, le=2000, description="leaf and crop that each metre of wire carries"
    )
    hung_weight_kg: float | None = Field(
        default=None, ge=0, le=2000, description="one weight half way between two eyes"
    )
    sag_limit_mm: float | None = Field(default=None, ge=0.1, le=20_000, description="the most a wire may sag")
    tensioners: int | None = Field(default=None, ge=1, le=1000, description="one a wire if left out")
    waste_percent: float = Field(default=10, ge=0, le=100, description="wire bought over what the runs need")
    # -- the trees --
    trees: int = Field(default=1, ge=1, le=500, description="how many stand along the wall")
    tree_spacing_mm: float | None = Field(default=None, ge=200, le=20_000, description="from stem to stem")
    fruit: Fruit | None = Field(
        default=None, description="apple, pear or stone fruit; from the plants of this file if left out"
    )
    rootstock: Rootstock | None = Field(default=None, description="M26, MM106, MM111 or quince A")
    age_years: float | None = Field(default=None, ge=0, le=200, description="years since planting")
    tiers_made: int = Field(default=0, ge=0, le=12, description="tiers that are trained already")
    filled_in_years: float | None = Field(default=None, ge=0, le=100, description="years that the client was told")
    leader_cut_mm: float | None = Field(
        default=None, ge=10, le=5000, description="how high the leader is cut at planting"
    )
    arm_angle_deg: float | None = Field(
        default=None, ge=0, le=90, description="how steep new arms are tied in their first summer; level is 0"
    )
    blossom_off_springs: int | None = Field(
        default=None, ge=0, le=20, description="first springs in which all blossom comes off"
    )
    tie_checks: int | None = Field(default=None, ge=0, le=52, description="times a year that the ties are looked at")
    # -- summer pruning --
    shoot_length_mm: float | None = Field(
        default=None, ge=10, le=5000, description="how long the new shoots have grown"
    )
    shortest_cut_mm: float | None = Field(default=None, ge=10, le=2000, description="shoots shorter than this are left")
    main_leaves: int | None = Field(
        default=None, ge=0, le=20, description="leaves left on a shoot from the stem or an arm"
    )
    spur_leaves: int | None = Field(default=None, ge=0, le=20, description="leaves left on a shoot from a spur")
    main_stub_mm: float | None = Field(
        default=None, ge=1, le=1000, description="what is left of a shoot from the stem or an arm"
    )
    spur_stub_mm: float | None = Field(default=None, ge=1, le=1000, description="what is left of a shoot from a spur")
