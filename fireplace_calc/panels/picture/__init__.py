"""The picture on the screen: which view, on which paper, sent when."""
