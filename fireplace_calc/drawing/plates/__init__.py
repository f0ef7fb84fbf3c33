"""The sheets one builds from: paper, frame and title block, marks, and figures put on a sheet."""
