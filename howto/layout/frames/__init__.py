"""Frames: what stands in each picture of a carousel, and the words that go out with it."""
