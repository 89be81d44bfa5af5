"""Languages: labels, phrases and words of time; what a reader is told, in their own language."""
