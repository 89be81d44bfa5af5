from howto.model.sheet import Grid

RINGS = Grid(caption="Rings", columns=("Up, mm", "0", "100"), rows=(("Width, mm", "0", "490"),), turned=True)
MONTHS = Grid(
    columns=("Month", "Water, L", "Month", "Water, L"),
    rows=(("January", "3.6", "March", "½"), ("February", "–", "", "")),
    folded=True,
)


def test_a_turned_table_upright_has_its_names_across() -> None:
    upright = RINGS.upright
    assert (upright.caption, upright.columns, upright.turned) == ("Rings", ("Up, mm", "Width, mm"), False)
    assert upright.rows == (("0", "0"), ("100", "490"))


def test_a_folded_table_upright_has_its_lower_half_below() -> None:
    upright = MONTHS.upright
    assert upright.columns == ("Month", "Water, L")
    assert upright.rows == (("January", "3.6"), ("February", "–"), ("March", "½"))
    assert upright.upright == upright


def test_words_stand_left_and_amounts_right() -> None:
    assert RINGS.left == (True, False, False)
    assert MONTHS.left == (True, False, True, False)
    assert Grid(columns=("What", "Level"), rows=()).left == (False, False)
    assert Grid(columns=("Test", "Level"), rows=(("tear, N", "4"), ("impact", "not tested"))).left == (True, True)
