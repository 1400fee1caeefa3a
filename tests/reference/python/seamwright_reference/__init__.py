"""A slow reference model of riveted joints, written apart from the library, from the rules of the trade alone."""
