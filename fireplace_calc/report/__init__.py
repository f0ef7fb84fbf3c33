"""An assessment as sentences and tables, in the reader's units."""
