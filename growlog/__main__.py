"""Arguments in, exit code out. Light on purpose: each worker process that reads photos imports this again."""

import multiprocessing
import sys


def main() -> int:
    """Runs the program with the arguments it was started with; the exit code."""
    multiprocessing.freeze_support()
    from growlog.assemble import start

    return start(sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
