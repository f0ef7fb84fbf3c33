"""Pictures of the heat: a map at an hour, and how the wood warms and cools."""
