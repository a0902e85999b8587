"""All figures of a crop in one searchable table, each with how it is worked out."""
