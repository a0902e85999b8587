"""Keep or clear: what another week brings against what would stand there instead."""
