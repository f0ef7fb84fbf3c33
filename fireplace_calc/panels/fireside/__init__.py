"""The page of who will sit before the fire: the scene, and what he decides."""
