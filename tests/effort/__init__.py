"""How much work an everyday input is, by the keystroke-level model."""
