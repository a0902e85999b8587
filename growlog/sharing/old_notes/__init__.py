"""Readers of tables that growers kept before: text with a separator, and spreadsheets."""
