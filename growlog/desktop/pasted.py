"""Files out of a drop or the clipboard; a bare picture on the clipboard is kept as a file first."""

import tempfile
from datetime import datetime
from pathlib import Path

from PySide6.QtCore import QMimeData
from PySide6.QtGui import QImage


def pasted_files(data: QMimeData) -> list[Path]:
    """Local files and folders; a bare picture becomes a PNG in a temporary folder, named by the moment."""
    files = [Path(url.toLocalFile()) for url in data.urls() if url.isLocalFile()]
    if files or not data.hasImage():
        return files
    image = QImage(data.imageData())
    if image.isNull():
        return []
    folder = Path(tempfile.mkdtemp(prefix="growing-room-"))
    target = folder / datetime.now().astimezone().strftime("pasted_%Y-%m-%d_%H%M%S.png")
    return [target] if image.save(str(target)) else []
