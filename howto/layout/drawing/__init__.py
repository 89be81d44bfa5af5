"""Draws: a drawing fitted to its box, its words placed so that none covers another."""
