"""Checks the program's JSON against the published schemas in docs/schema.

usage: check_json.py PROGRAM SOURCE_FOLDER
"""
import json
import os
import subprocess
import sys

import jsonschema

CALLS = {
    "ladder": [["ladder", "demo"], ["ladder", "demo", "--risk-limit", "0.06"], ["ladder", "demo", "--risk-limit", "0.0001"],
               ["ladder", "demo", "--finer", "2:4"]],
    "comparison": [["compare", "demo"], ["compare", "demo", "--risk-limit", "0.06"]],
    "mixture": [["mixture", "demo", "ethanol 30, isooctane 70"], ["mixture", "demo", "acetone 100"]],
    "rows": [["list", "solvents"], ["list", "materials", "--having", "sphere"], ["list", "sources"], ["list", "families"],
             ["check", "demo"], ["version"], ["help", "sheet"]],
}


def broken(document):
    """The same answer with one thing wrong, which a schema worth its name must notice."""
    bad = dict(document)
    bad["format"] = 2
    yield bad
    bad = dict(document)
    del bad["program"]
    yield bad


def main():
    program, source = sys.argv[1], sys.argv[2]
    faults = 0
    for name, calls in CALLS.items():
        with open(os.path.join(source, "docs/schema", name + ".schema.json"), encoding="utf-8") as file:
            schema = json.load(file)
        jsonschema.Draft202012Validator.check_schema(schema)
        validator = jsonschema.Draft202012Validator(schema)
        for args in calls:
            done = subprocess.run([program] + args + ["--format", "json"], capture_output=True, text=True, check=False)
            document = json.loads(done.stdout)
            for error in list(validator.iter_errors(document))[:5]:
                print("{}: {} at {}".format(" ".join(args), error.message[:200], list(error.absolute_path)))
                faults += 1
            for bad in broken(document):
                if validator.is_valid(bad):
                    print("{}: the schema accepts a broken answer".format(" ".join(args)))
                    faults += 1
    print("{} faults".format(faults))
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
