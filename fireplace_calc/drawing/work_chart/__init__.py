"""The order of work as a chart for the wall, with a card for every kind of step."""
