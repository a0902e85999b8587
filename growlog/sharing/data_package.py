"""The open exchange format of the logbook: a Frictionless tabular data package, written and read.

A folder with datapackage.json, a CSV file for each table and the original photos below photos/.
"""

from growlog.sharing.descriptor import DESCRIPTOR, read_as_of
from growlog.sharing.package import Package
from growlog.sharing.package_reader import read_package
from growlog.sharing.package_writer import package_files, write_package
from growlog.sharing.photo_files import Stopped, check_photo, copy_photo
from growlog.sharing.problems import PackageProblem

__all__ = [
    "DESCRIPTOR",
    "Package",
    "PackageProblem",
    "Stopped",
    "check_photo",
    "copy_photo",
    "package_files",
    "read_as_of",
    "read_package",
    "write_package",
]
