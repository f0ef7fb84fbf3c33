"""How heavy a lift may be, and who lifts it."""
