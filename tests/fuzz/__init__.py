"""Looks for files on which a check stops, hangs or crawls: real ones, spoiled at random, by a command of its own."""
