"""Compute: the figures of a technique, and prose with its `{words}` filled."""
