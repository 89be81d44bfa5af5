"""Puts what was placed on paper, on a screen and in pictures; decides nothing."""
