"""Plots of results: efficiency against pitch, maps of modes, fronts, rule books side by side, sensitivity, years.

They need matplotlib (``pip install "seamwright[plot]"``). Each takes ``ax=``, the axes to draw on, makes its own where
none are given, and returns them. Lines and areas differ in lightness, and in dashes, markers or hatches as well, so
that they can be told apart in grey; they are labelled where they are. Axes are in the units that went in, or in those
that ``units=`` names. The caution stands in small print on each figure.

Example:
    >>> from seamwright import plot
    >>> steel = Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
    >>> design = size(form=Form.lap(2), plate=mm(13), materials=steel, book="metric")
    >>> plot.pitch(design).get_xlabel()
    'pitch of the outer row [mm]'
"""

from ._look import DASHES, INKS, MARKERS
from ._map import mode_map
from ._pitch import pitch
from ._studies import books, front, sensitivity
from ._years import years

__all__ = ["DASHES", "INKS", "MARKERS", "books", "front", "mode_map", "pitch", "sensitivity", "years"]

for _name in __all__:
    if callable(globals()[_name]):
        globals()[_name].__module__ = "seamwright.plot"
del _name
