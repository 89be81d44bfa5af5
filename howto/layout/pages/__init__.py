"""Pages: what stands on cards, leaflets and letters, and in which order."""
