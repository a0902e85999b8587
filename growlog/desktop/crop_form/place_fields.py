"""Where a crop stands: room, share of the floor, tank. All of it may be left open."""

from collections.abc import Sequence
from datetime import date

from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import ChoiceField, FormGrid, NumberField, SectionTitle
from growlog.records.crop import Placement
from growlog.services.open_logbook import new_id
from growlog.services.rooms import RoomView
from growlog.words import say


class PlaceFields(QWidget):
    """Hidden where there is no room yet. The share is typed in per cent and kept as a part of 1."""

    def __init__(self, rooms: Sequence[RoomView], placement: Placement | None) -> None:
        super().__init__()
        self._rooms = {view.room.id: view for view in rooms}
        self._before = placement
        none = say("not said")
        choices = [(view.room.id, view.room.name) for view in rooms]
        self.room_field = ChoiceField(say("Room"), choices, placement.room_id if placement else None, none, "room")
        self.share_field = NumberField(say("Share of the floor"), "%", 0, 100, 1, name="floorShare")
        self.tank_field = ChoiceField(say("Tank"), [], None, none, "tank")
        if placement is not None and placement.floor_share is not None:
            self.share_field.set_value(placement.floor_share * 100)
        grid = FormGrid(3)
        grid.add(self.room_field, self.share_field, self.tank_field)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(SectionTitle(say("Place")))
        column.addWidget(grid)
        self._show_tanks(placement.tank_id if placement else None)
        self.room_field.value_changed.connect(self._room_changed)
        self.setVisible(bool(rooms))

    def placement(self, crop_id: str, from_day: date) -> Placement | None:
        """A new placement from that day on; None where nothing is said or nothing has changed."""
        room_id = self.room_field.value()
        if room_id is None:
            return None
        percent = self.share_field.value()
        share = None if percent is None else percent / 100
        tank_id = self.tank_field.value()
        before = self._before
        if before is not None and (before.room_id, before.tank_id) == (room_id, tank_id):
            same = before.floor_share == share or abs((before.floor_share or -1) - (share or -1)) < 1e-9
            if same:
                return None
        return Placement(new_id(), crop_id, room_id, from_day, None, tank_id, share)

    def _room_changed(self) -> None:
        self._show_tanks(None)

    def _show_tanks(self, tank_id: str | None) -> None:
        view = self._rooms.get(self.room_field.value() or "")
        tanks = view.tanks if view is not None else ()
        self.tank_field.set_choices([(tank.id, tank.name) for tank in tanks], tank_id)
        self.tank_field.setEnabled(bool(tanks))
        self.share_field.setEnabled(view is not None)
