"""The command that works out a mix from a file."""

from pathlib import Path
from typing import Any

import click

from growlog.command_line.output import tell, tell_json
from growlog.records.display import plain_mass
from growlog.services.mixing import DoseLine, MixResult, read_mix, work_out
from growlog.words import say
