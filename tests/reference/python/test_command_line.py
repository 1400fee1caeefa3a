"""The command line: answers and errors of a list of joints."""

import json
import subprocess
import sys
from pathlib import Path


def run(cases):
    said = subprocess.run([sys.executable, "-m", "seamwright_reference"], input=json.dumps(cases), text=True,
                          capture_output=True, check=True, cwd=Path(__file__).parent)
    return json.loads(said.stdout)


def test_command_line():
    """Khurmi & Gupta, example 9.2 (transcription): single lap, 21 600 N of 36 000 N; then what cannot be read."""
    part = {"thickness": 6, "tension": 120, "bearing": 180}
    good = {"id": "a", "form": "lap", "pitch": 50, "plate": part, "others": [part], "shear": 90,
            "rows": [{"rivets": 1, "hole": 20}], "counted": ["all rivets"]}
    answers = run([good, good | {"form": "weld"}, {"id": "c"}, 7])
    assert answers[0]["efficiency"] == answers[0]["efficiency_counted"] == 0.6
    assert answers[0]["modes"][0]["strength"] == 21600
    assert answers[1]["error"].startswith("ValueError: form")
    assert [answer["id"] for answer in answers[2:]] == ["c", None]
    assert all("error" in answer for answer in answers[1:])
