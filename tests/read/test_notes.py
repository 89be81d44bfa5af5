from howto.read.notes import listed, nearest, short


def test_words_are_listed_as_a_reader_sees_them() -> None:
    assert listed([]) == ""
    assert listed(["a"]) == "`a`"
    assert listed(["a", "b", "c"]) == "`a`, `b` or `c`"


def test_the_nearest_word_is_the_likeliest_slip() -> None:
    assert nearest("shpae", ["share", "shape"]) == "shape"
    assert nearest("Finished_Widht", ["finished width", "standing width"]) == "finished width"
    assert nearest("x", ["finished width"]) is None
    assert nearest("owdth", ["width"]) == "width"  # it starts otherwise, and has nearly all its letters


def test_a_word_that_only_looks_alike_is_no_slip() -> None:
    assert nearest("lemon", ["apple", "plum", "almond"]) is None
    assert nearest("tree width", ["spreader width", "tree count", "area"]) is None
    assert nearest("finshd wdth", ["finished width", "standing width"]) == "finished width"


def test_a_long_text_is_cut_for_quoting() -> None:
    assert short("one\n two") == "one two"
    assert short("a" * 41) == "a" * 39 + "…"
