"""Old notes in: a table kept elsewhere becomes entries, shown before anything is written."""
