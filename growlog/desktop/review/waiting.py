"""Where a dialog of the review shows how far its work is."""

from PySide6.QtWidgets import QBoxLayout

from growlog.desktop.look.widgets import DialogFrame, ProgressPanel


def progress_above_buttons(dialog: DialogFrame) -> ProgressPanel:
    """A panel above the dialog's buttons, where it is seen however far the dialog is scrolled."""
    panel = ProgressPanel()
    column = dialog.footer.layout()
    if isinstance(column, QBoxLayout):
        column.insertWidget(0, panel)
    return panel
