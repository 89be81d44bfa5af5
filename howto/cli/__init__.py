"""The commands: they parse words, call the pipeline, print, and set the exit status."""
