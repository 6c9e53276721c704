"""The metals, read from their rows in core/stock/metal.hpp: METALS in the order of the enum, CUTS_AS for those that cut as another."""
import pathlib
import re

TEXT = (pathlib.Path(__file__).resolve().parents[2] / "core" / "stock" / "metal.hpp").read_text(encoding="utf-8")
ROWS = re.findall(r'\{Metal::(\w+), "(\w+)", words::metal::\w+, Metal::(\w+),', TEXT)
KEYS = {enumerator: key for enumerator, key, _ in ROWS}
METALS = tuple(key for _, key, _ in ROWS)
CUTS_AS = {key: KEYS[base] for _, key, base in ROWS if KEYS[base] != key}
assert len(METALS) > 4, "core/stock/metal.hpp has its rows in another form"
