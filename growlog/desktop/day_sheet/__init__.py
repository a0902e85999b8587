"""The day sheet: the right column of the window, and the large views of its photo."""
