"""Places what is known: text in lines, drawings in boxes, blocks on sheets and frames."""
