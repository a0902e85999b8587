"""What a decoder of pictures may throw at damaged or hostile input. Anything else is a fault of ours."""

import struct
import zlib

DECODER_FAULTS = (
    ArithmeticError,
    AssertionError,
    AttributeError,
    EOFError,
    LookupError,
    MemoryError,
    OSError,
    RuntimeError,
    SyntaxError,
    TypeError,
    ValueError,
    struct.error,
    zlib.error,
)
