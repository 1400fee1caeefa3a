//! Drawings of a joint: section and plan, as SVG and DXF.
