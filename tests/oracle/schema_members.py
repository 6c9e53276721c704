#!/usr/bin/python3
"""Every member of the workbook's structs is a key of the schema. usage: tests/oracle/schema_members.py

A member that is added to a struct and forgotten in core/schema/schema_*.cpp would be lost on every save.
"""
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
HEADERS = ["core/gear/machine.hpp", "core/wear/wear_log.hpp", "core/air/air_system.hpp", "core/supply/circuit.hpp",
           "core/price/rates.hpp", "core/price/quote_terms.hpp",
           "core/tune/test_cut.hpp", "core/part/finding.hpp", "core/part/part_spec.hpp", "core/worksheet/workbook.hpp"]
MEMBER = re.compile(r"^\s+(?!static|friend|using)[\w:<>, ]+?\s(\w+)\s*(?:\{.*\}|=[^;]+)?;", re.M)


def main():
    schema = "".join(path.read_text() for path in sorted((ROOT / "core/schema").glob("schema_*.cpp")))
    passed, failed = 0, 0
    for header in HEADERS:
        text = re.sub(r"//[^\n]*", "", (ROOT / header).read_text())
        for name, body in re.findall(r"^struct (\w+) \{(.*?)^\};", text, re.M | re.S):
            body = re.sub(r"^\s+friend [^\n]*", "", body, flags=re.M)
            members = MEMBER.findall(body)
            if len(members) != body.count(";") or not members:
                failed += 1
                print(f"{header}: struct {name} has lines this check cannot read")
            for member in members:
                if re.search(rf"&(\w+::)*{name}::{member}>", schema):
                    passed += 1
                else:
                    failed += 1
                    print(f"{header}: {name}::{member} is not in the schema")
    print(f"{passed} passed, {failed} failed")
    return failed != 0


sys.exit(main())
