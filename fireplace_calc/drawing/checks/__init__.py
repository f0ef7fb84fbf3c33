"""An inspector's page and its back."""
