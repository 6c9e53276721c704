"""The metals, read from assets/data/metals.json: METALS in the order of the enum, CUTS_AS for those that cut as another, table() its rows."""
import json
import pathlib

DATA = pathlib.Path(__file__).resolve().parents[2] / "assets" / "data"
TABLES = json.loads((DATA / "metals.json").read_text(encoding="utf-8"))["tables"]


def table(name):
    """The rows of a table of the metals."""
    return TABLES[name]["rows"]


METALS = tuple(row["metal"] for row in table("metals"))
CUTS_AS = {row["metal"]: row["cuts_as"] for row in table("metals") if row["cuts_as"] != row["metal"]}
