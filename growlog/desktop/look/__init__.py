"""How the whole program looks: colours, type, marks, icons and the small widgets that every screen shares."""
