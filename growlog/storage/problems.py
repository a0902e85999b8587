"""What can be wrong with a logbook on disk: the world's failures, each with its plain sentence."""


class LogbookProblem(Exception):
    """The logbook cannot be used as asked; str() is the sentence for the user."""


class NotALogbook(LogbookProblem):
    """The folder or its database is not ours; it was not touched."""


class NewerLogbook(LogbookProblem):
    """A later version of the program wrote it; it was not touched."""


class LogbookInUse(LogbookProblem):
    """Another program writes to it now."""


class LogbookNotWritable(LogbookProblem):
    """No rights, no space, or opened for reading only."""


class RecordMissing(LogbookProblem):
    """A record that was asked for is not there."""


class RecordMoved(LogbookProblem):
    """A record changed since it was read; nothing was written."""
