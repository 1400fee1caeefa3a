"""The documentation site, built by `tests/gate.sh only python_site`. Nothing in it is fetched from elsewhere."""

import seamwright
from docutils import nodes
from latex2mathml.converter import convert

project = "seamwright"
author = "the seamwright authors"
release = version = seamwright.__version__
extensions = ["myst_nb", "sphinx.ext.autodoc", "sphinx.ext.napoleon"]
exclude_patterns = ["README.md"]

# Dashes only: quotes stay as the clauses have them.
smartquotes_action = "D"

html_theme = "furo"
html_title = f"seamwright {release}"
html_static_path = ["_static"]
html_css_files = ["seamwright.css"]
templates_path = ["_templates"]
html_show_sphinx = False
html_copy_source = False
html_show_sourcelink = False
html_theme_options = {"announcement": f"<b>Caution.</b> {seamwright.CAUTION}"}
html_context = {"caution": seamwright.CAUTION}

# Executed before, by tests/docs/notebooks.py.
nb_execution_mode = "off"
# With tables.
nb_render_markdown_format = "myst"
# No widgets, so no scripts from elsewhere.
nb_ipywidgets_js = {}
myst_enable_extensions = ["dollarmath", "deflist", "colon_fence"]
myst_heading_anchors = 3

autodoc_member_order = "bysource"
autodoc_typehints = "signature"
autodoc_preserve_defaults = True
python_use_unqualified_type_names = True
python_maximum_signature_line_length = 88
add_module_names = False
napoleon_google_docstring = True
napoleon_numpy_docstring = False
napoleon_use_rtype = False
napoleon_use_ivar = True
napoleon_custom_sections = ["Source"]


def inline_math(self, node):
    """Mathematics as MathML, which browsers set by themselves."""
    self.body.append(convert(node.astext()))
    raise nodes.SkipNode


def block_math(self, node):
    """The same on a line of its own."""
    self.body.append(f'<div class="math">{convert(node.astext(), display="block")}</div>')
    raise nodes.SkipNode


html_math_renderer = "mathml"


def setup(app):
    app.add_html_math_renderer("mathml", (inline_math, None), (block_math, None))
