# Steps of tests/gate.sh on the notebooks and the documentation site of the Python package. Sourced by it.

DOCS_SOURCES=bindings/python/docs

# Python with what notebooks and site need, at the pins of bindings/python/docs, and the package as it is now.
docs_python() {
    local place=$CARGO_TARGET_DIR/gate-docs wanted=$DOCS_SOURCES/requirements.txt maturin
    maturin=$CARGO_TARGET_DIR/gate-python/bin/maturin
    [ -x "$maturin" ] || fail "run the step python before this one: it brings maturin"
    if ! cmp -s "$wanted" "$place/wanted" || ! "$place/bin/python" -c '' 2>/dev/null; then
        rm -rf "$place"
        python3 -m venv "$place"
        "$place/bin/pip" -q --disable-pip-version-check install -r "$wanted" || fail "pip could not install $wanted"
        cp "$wanted" "$place/wanted"
    fi
    rm -rf "$place/wheel"
    # By the interpreter of the step python, so that nothing is compiled again.
    "$maturin" build -q --release --locked -m bindings/python/Cargo.toml \
        -i "$CARGO_TARGET_DIR/gate-python/bin/python" -o "$place/wheel"
    "$place/bin/pip" -q --disable-pip-version-check install --force-reinstall --no-deps "$place"/wheel/*.whl
    DOCS_PYTHON=$place/bin/python
}

# Every notebook from top to bottom, and one with a false claim, which must fail.
step_python_notebooks() {
    local ruff=$CARGO_TARGET_DIR/gate-python/bin/ruff config=bindings/python/ruff.toml
    docs_python
    "$ruff" format --config "$config" --check examples/notebooks tests/docs "$DOCS_SOURCES"
    "$ruff" check --config "$config" examples/notebooks tests/docs "$DOCS_SOURCES"
    counted 2 "formatting and lints of notebooks and documentation"
    rm -rf "$CARGO_TARGET_DIR/notebooks"
    PYTHONDONTWRITEBYTECODE=1 "$DOCS_PYTHON" -W error::DeprecationWarning:seamwright tests/docs/notebooks.py \
        "$CARGO_TARGET_DIR/notebooks"
}

# The site from docstrings, rule books, formulas and the executed notebooks; a warning is an error, as is anything that
# a page would fetch from elsewhere.
step_python_site() {
    local place=$CARGO_TARGET_DIR/site
    [ -d "$CARGO_TARGET_DIR/notebooks" ] || fail "run the step python_notebooks before this one"
    docs_python
    rm -rf "$place"
    mkdir -p "$place"
    PYTHONDONTWRITEBYTECODE=1 "$DOCS_PYTHON" "$DOCS_SOURCES/generate.py" "$place/source" "$CARGO_TARGET_DIR/notebooks"
    "$DOCS_PYTHON" -m sphinx -q -W --keep-going -b html -d "$place/doctrees" "$place/source" "$place/html"
    PYTHONDONTWRITEBYTECODE=1 "$DOCS_PYTHON" tests/docs/site.py "$place/html"
    echo 'A [page](that-is-not-there.md).' >>"$place/source/start.md"
    if "$DOCS_PYTHON" -m sphinx -q -W -b dummy -d "$place/doctrees" "$place/source" "$place/bite" 2>"$LOGS/site.bite"; then
        fail "the site is built with a dead link: the build does not bite"
    fi
    grep -q 'that-is-not-there' "$LOGS/site.bite" || fail "the dead link failed otherwise: see $LOGS/site.bite"
    counted 1 "a dead link stops the build"
}
