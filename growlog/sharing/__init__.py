"""Files for others, and readers of the forms that come back."""
