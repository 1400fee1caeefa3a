"""Sweeps in other libraries, by their own interfaces: pandas, polars, xarray, Arrow, tqdm, Dask on a local cluster."""

import importlib.util
import io

import dask
import dask.array as da
import numpy as np
import pandas as pd
import polars as pl
import pyarrow as pa
import pytest
import seamwright as sw
import tqdm.auto
import xarray as xr
from dask.distributed import Client, LocalCluster
from seamwright import MPa, inch, mm

STEEL = sw.Materials(tension=MPa(80), rivet_shear=MPa(60), bearing=MPa(120))
SEAM = {"form": sw.Form.double_strap(3), "book": "metric", "materials": STEEL, "hole": mm(21), "strap": mm(9)}
PITCH = np.linspace(60.0, 140.0, 12)
# Row 5 is no number, row 7 is filled by its hole.
PITCH[[5, 7]] = np.nan, 20.0


@pytest.fixture
def rows():
    return sw.sweep(pitch=mm(PITCH), plate=inch(np.linspace(0.3, 0.7, 12)), strengths=[0], **SEAM)


@pytest.fixture
def grid():
    return sw.sweep(pitch=mm(PITCH), plate=mm([8, 10, 12]), outer=True, strengths=[0], **SEAM)


def names(found):
    """Mode and state of each row in words."""
    modes = [None if n == sw.NO_MODE else found.modes[n].name for n in found.mode.reshape(-1)]
    states = ["computed" if n == 0 else sw.ErrorKind(n).name.lower() for n in found.status.reshape(-1)]
    return modes, states


COLUMNS = ["pitch_mm", "plate_inch", "efficiency", "book_efficiency", "credited", "mode", "status", "strength_0_N"]


def test_pandas(rows, grid):
    frame = rows.to_pandas()
    assert list(frame) == COLUMNS and len(frame) == 12
    modes, states = names(rows)
    assert [None if pd.isna(x) else x for x in frame["mode"]] == modes
    assert list(frame["status"]) == states and states[5] == "not_finite" and states[7] == "holes_fill_pitch"
    assert np.array_equal(frame["efficiency"], rows.efficiency, equal_nan=True)
    assert frame.attrs["caution"] == sw.CAUTION
    best = frame.dropna().groupby("mode", observed=True)["efficiency"].max()
    assert best.max() == np.nanmax(rows.efficiency)
    wide = grid.to_pandas()
    assert len(wide) == 36 and wide["plate_mm"].tolist() == [8, 10, 12] * 12
    assert wide["pitch_mm"].iloc[4] == PITCH[1]


def test_polars(rows):
    frame = rows.to_polars()
    assert frame.columns == COLUMNS and frame.height == 12
    modes, states = names(rows)
    assert frame["mode"].to_list() == modes and frame["status"].to_list() == states
    assert frame.schema["mode"] == pl.Enum([mode.name for mode in rows.modes])
    assert np.array_equal(frame["credited"].to_numpy(), rows.credited, equal_nan=True)


def test_arrow(rows):
    table = rows.to_arrow()
    assert table.column_names == COLUMNS and table.num_rows == 12
    modes, states = names(rows)
    assert table["mode"].to_pylist() == modes and table["status"].to_pylist() == states
    assert table.schema.metadata[b"caution"].decode() == sw.CAUTION
    assert np.array_equal(table["efficiency"].to_numpy(), rows.efficiency, equal_nan=True)
    table.validate(full=True)


@pytest.mark.parametrize("absent", [(), ("pyarrow",), ("polars",)])
def test_arrow_streams(rows, monkeypatch, absent):
    """By whichever of the two libraries is there."""
    found = importlib.util.find_spec
    monkeypatch.setattr("seamwright._sweep_result.find_spec", lambda name: None if name in absent else found(name))
    table = pa.table(rows)
    assert table.column_names == COLUMNS and table.num_rows == 12
    assert table["mode"].to_pylist() == names(rows)[0]
    reader = pa.RecordBatchReader.from_stream(rows)
    assert reader.schema.names == COLUMNS
    frame = pl.DataFrame(rows)
    assert frame["status"].to_list() == names(rows)[1]
    assert np.array_equal(frame["credited"].to_numpy(), rows.credited, equal_nan=True)


def test_arrow_without_a_library(rows, monkeypatch):
    monkeypatch.setattr("seamwright._sweep_result.find_spec", lambda _: None)
    with pytest.raises(sw.SeamwrightError, match="pyarrow or polars") as error:
        pa.table(rows)
    assert error.value.kind is sw.ErrorKind.MISSING


def test_xarray(rows, grid):
    data = grid.to_xarray()
    assert isinstance(data, xr.Dataset) and dict(data.sizes) == {"pitch": 12, "plate": 3}
    assert data["pitch"].attrs["units"] == "mm" and data.attrs["book"] == "metric"
    assert float(data["efficiency"].sel(plate=10).isel(pitch=2)) == grid.efficiency[2, 1]
    flags = data["mode"].attrs
    at = list(flags["flag_values"]).index(int(data["mode"].isel(pitch=2, plate=1)))
    assert flags["flag_meanings"].split()[at] == grid.modes[grid.mode[2, 1]].name.replace(" ", "_")
    assert data["strength_0"].attrs["units"] == "N"
    with pytest.raises(sw.SeamwrightError, match="outer=True"):
        rows.to_xarray()


def test_a_bar(monkeypatch):
    said = io.StringIO()
    made = []

    class Bar(tqdm.auto.tqdm):
        def __init__(self, **options):
            made.append(self)
            super().__init__(**options, file=said)

    monkeypatch.setattr(tqdm.auto, "tqdm", Bar)
    sw.sweep(pitch=mm(np.resize(PITCH, 200_000)), plate=mm(12), progress=True, **SEAM)
    assert (made[0].n, made[0].total) == (200_000, 200_000) and "joint" in said.getvalue()


def test_dask_with_a_cluster(tmp_path):
    """Block by block on a cluster of two workers: the same bits as at once."""
    rng = np.random.default_rng(4)
    pitch, plate = rng.uniform(70, 140, 50_000), rng.uniform(8, 20, 50_000)

    def efficiency(pitch, plate):
        return sw.sweep(pitch=mm(pitch), plate=mm(plate), **SEAM).efficiency

    blocks = [da.from_array(x, chunks=7_000) for x in (pitch, plate)]
    with (
        dask.config.set({"temporary-directory": str(tmp_path)}),
        LocalCluster(n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None) as cluster,
        Client(cluster) as client,
    ):
        found = da.map_blocks(efficiency, *blocks, dtype=float).compute()
        # A whole result goes from a worker to here as well.
        swept = client.submit(lambda x: sw.sweep(pitch=mm(x), plate=mm(12), **SEAM), pitch[:100]).result()
    assert found.tobytes() == efficiency(pitch, plate).tobytes()
    assert swept == sw.sweep(pitch=mm(pitch[:100]), plate=mm(12), **SEAM)


def test_what_is_not_installed_is_named(rows, monkeypatch):
    import sys

    for library, use in (("pandas", rows.to_pandas), ("polars", rows.to_polars), ("xarray", rows.to_xarray)):
        monkeypatch.setitem(sys.modules, library, None)
        with pytest.raises(sw.SeamwrightError, match=f"pip install {library}"):
            use()
    monkeypatch.setitem(sys.modules, "tqdm.auto", None)
    with pytest.raises(sw.SeamwrightError, match="pip install tqdm"):
        sw.sweep(pitch=mm(PITCH), plate=mm(12), progress=True, **SEAM)
