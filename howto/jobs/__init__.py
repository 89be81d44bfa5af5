"""Jobs: one file a thing people ask for."""
