"""Keep a garden technique once, check it by arithmetic, and print it three ways."""
