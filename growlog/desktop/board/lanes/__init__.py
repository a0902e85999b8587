"""The lanes of the board, one painter each."""

from growlog.desktop.board.lanes.air_lanes import DryAirLane, TemperatureLane
from growlog.desktop.board.lanes.drain_lanes import DrainEcLane, DrainShareLane
from growlog.desktop.board.lanes.due_lane import DueLane
from growlog.desktop.board.lanes.events_lane import EventsLane
from growlog.desktop.board.lanes.feeds_lane import FeedsLane
from growlog.desktop.board.lanes.lane import BoardLane, Space
from growlog.desktop.board.lanes.light_lane import LightLane
from growlog.desktop.board.lanes.marks_lane import ReadingsLane, TrainingLane
from growlog.desktop.board.lanes.photos_lane import PhotosLane
from growlog.desktop.board.lanes.picks_lane import PicksLane
from growlog.desktop.board.lanes.pollination_lane import PollinationLane
from growlog.desktop.board.lanes.stage_lane import StageLane
from growlog.desktop.board.lanes.use_lanes import CostLane, EnergyLane

__all__ = [
    "BoardLane",
    "CostLane",
    "DrainEcLane",
    "DrainShareLane",
    "DryAirLane",
    "DueLane",
    "EnergyLane",
    "EventsLane",
    "FeedsLane",
    "LightLane",
    "PhotosLane",
    "PicksLane",
    "PollinationLane",
    "ReadingsLane",
    "Space",
    "StageLane",
    "TemperatureLane",
    "TrainingLane",
]
