"""A class on the screen: the student's page, and the trainer's."""
