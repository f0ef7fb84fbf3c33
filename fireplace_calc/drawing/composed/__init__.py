"""Views put together on one sheet, and one check where it is measured."""
