"""The small widgets that every screen shares; each file holds one idea."""

from growlog.desktop.look.widgets.banner import Banner, announce
from growlog.desktop.look.widgets.buttons import Button, SegmentSwitch
from growlog.desktop.look.widgets.card import Card, Ground
from growlog.desktop.look.widgets.choice_field import ChoiceField
from growlog.desktop.look.widgets.count_stepper import CountStepper
from growlog.desktop.look.widgets.day_field import DayField, TimeField
from growlog.desktop.look.widgets.dialog_frame import DialogFrame
from growlog.desktop.look.widgets.empty_state import EmptyState
from growlog.desktop.look.widgets.field import Field
from growlog.desktop.look.widgets.fitting_words import fit_words
from growlog.desktop.look.widgets.flow_layout import FlowLayout
from growlog.desktop.look.widgets.form_grid import FieldRow, FormGrid, check_all
from growlog.desktop.look.widgets.grow import grow_to_fit
from growlog.desktop.look.widgets.kept_row import KeptRow
from growlog.desktop.look.widgets.labels import ElidedLabel, Rule, SectionTitle, TextLabel
from growlog.desktop.look.widgets.number_field import NumberField, limited_number_field
from growlog.desktop.look.widgets.progress_panel import ProgressPanel
from growlog.desktop.look.widgets.sparkline import Sparkline
from growlog.desktop.look.widgets.table_dress import dress_table
from growlog.desktop.look.widgets.text_field import NoteField, TextField

__all__ = [
    "Banner",
    "Button",
    "Card",
    "ChoiceField",
    "CountStepper",
    "DayField",
    "DialogFrame",
    "ElidedLabel",
    "EmptyState",
    "Field",
    "FieldRow",
    "FlowLayout",
    "FormGrid",
    "Ground",
    "KeptRow",
    "NoteField",
    "NumberField",
    "ProgressPanel",
    "Rule",
    "SectionTitle",
    "SegmentSwitch",
    "Sparkline",
    "TextField",
    "TextLabel",
    "TimeField",
    "announce",
    "check_all",
    "dress_table",
    "fit_words",
    "grow_to_fit",
    "limited_number_field",
]
