"""Frozen values that the stages hand on; no behaviour beyond their own arithmetic."""
