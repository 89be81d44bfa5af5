"""Runs the trade's rules over what was read, and says where each one is broken."""
