"""`python -m seamwright_reference < cases.json > results.json` (README.md has the shape)."""

import json
import sys

from .cases import evaluate

results = []
for case in json.load(sys.stdin):
    try:
        results.append(evaluate(case))
    except (KeyError, ValueError, TypeError) as error:
        results.append({"id": case.get("id") if isinstance(case, dict) else None,
                        "error": f"{type(error).__name__}: {error}"})
json.dump(results, sys.stdout, indent=1)
