from . import _native
