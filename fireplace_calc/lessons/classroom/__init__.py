"""A class: its roster and tickets, every student's own work, and the results of all."""
