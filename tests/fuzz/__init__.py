"""Looks for files on which a check stops, hangs or crawls: real ones, changed at random. No part of the test run."""
