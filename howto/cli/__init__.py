"""The commands: they parse words, call a job, print, and set the exit status."""
