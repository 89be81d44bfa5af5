"""A package of its own, so that a `tests` folder left in site-packages by a library cannot shadow it."""
