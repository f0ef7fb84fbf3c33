"""What a design makes: levels, outlines and solids, each with a name and a material."""
