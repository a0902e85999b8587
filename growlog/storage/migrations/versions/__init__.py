"""Schema changes, one numbered file each."""
