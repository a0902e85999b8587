"""Numbers in, numbers out: no clock, no file, no window, no database."""
