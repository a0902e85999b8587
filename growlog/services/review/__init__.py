"""A crop from start to finish as plain values: for the page of the program, the shared page, paper and decisions."""
