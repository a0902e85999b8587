"""One use case per function: plain values in and out; each change returns a Change."""
