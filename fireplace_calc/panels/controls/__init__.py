"""Controls made from the declared inputs."""
