"""What the room sees laid: the courses of the face, stones, and joints of the lining."""
