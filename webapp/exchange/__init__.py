"""Files that people can hold: in and out."""
