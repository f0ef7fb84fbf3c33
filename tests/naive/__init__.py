"""A second, plain reckoning of whole designs, for the tests alone: it reads the files itself and never calls the package.

Each module says one thing from its definition, slowly: solids are summed slice by slice, bricks are walked course by course,
the fire is halved down to its flow. What agrees here to the last digit was reckoned twice, by two ways.
"""
