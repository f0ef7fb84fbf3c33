"""What the survey asks, station by station, in the order whoever measures walks."""
