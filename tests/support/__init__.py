"""What tests share: builders, the case reader and samples."""
