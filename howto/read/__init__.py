"""Reading: files in, values and findings out."""
