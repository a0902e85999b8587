"""The room: its floor, lamps and tanks."""

from growlog.desktop.room.room_dialog import RoomDialog

__all__ = ["RoomDialog"]
