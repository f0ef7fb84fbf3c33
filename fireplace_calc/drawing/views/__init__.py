"""The views: front, plan, section, roof, details, each on its own cell of a sheet."""
