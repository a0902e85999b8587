"""The quick line on the day sheet: its field, the reading below it, and its page of words."""

from growlog.desktop.quick_line.panel import QuickLinePanel

__all__ = ["QuickLinePanel"]
