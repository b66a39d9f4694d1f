"""Checks the program's JSON against the published schemas in docs/schema.

usage: check_json.py PROGRAM SOURCE_FOLDER
"""
import json
import os
import subprocess
import sys
import tempfile

import jsonschema

CALLS = {
    "ladder": [["ladder", "demo"], ["ladder", "demo", "--risk-limit", "0.06"], ["ladder", "demo", "--risk-limit", "0.0001"],
               ["ladder", "demo", "--vial", "3", "--measure", "1"],
               ["ladder", "demo", "--finer", "2:4"]],
    "comparison": [["compare", "demo"], ["compare", "demo", "--risk-limit", "0.06"]],
    "mixture": [["mixture", "demo", "ethanol 30, isooctane 70"], ["mixture", "demo", "acetone 100"]],
    "rows": [["list", "solvents"], ["list", "materials", "--having", "sphere"], ["list", "sources"], ["list", "families"],
             ["check", "demo"], ["version"], ["help", "sheet"]],
}

LOG = """{"gentlest_log":1}
{"test":1,"date":"2026-03-14","mixture":"isooctane 100","x_cm":3.5,"y_cm":41,"rolls":4,"seconds":20.5,"removal":"no effect"}
{"test":2,"mixture":"isooctane 71, acetone 29","removal":"fully removed","original":"nothing seen"}
{"test":3,"mixture":"moonshine 100","removal":"fully removed"}
{"test":2,"mixture":"isooctane 71, acetone 29","removal":"mostly removed","original":"nothing seen","correction":"dry"}
{"test":4,"mixture":"acetone 100","original":"colour on the swab","colour":"original"}
{"test":4,"correction":"wrong bottle","withdrawn":true}
"""


def broken(document):
    """The same answer with one thing wrong, which a schema worth its name must notice."""
    bad = dict(document)
    bad["format"] = 2
    yield bad
    bad = dict(document)
    del bad["program"]
    yield bad


def main():
    with tempfile.TemporaryDirectory(prefix="gentlest_json_") as folder:
        log = os.path.join(folder, "easel.log")
        with open(log, "w", encoding="utf-8") as file:
            file.write(LOG)
        tests = os.path.join(folder, "resin.csv")
        with open(tests, "w", encoding="utf-8") as file:
            file.write("solvent,dissolves\nisooctane,no\ntoluene,yes\nacetone,yes\nethanol,no\nbutanone,yes\n"
                       "ethyl_acetate,yes\nn_butanol,no\nxylene,yes\n")
        calls = {**CALLS, "report": [["report", "demo", log]]}
        calls["rows"] = CALLS["rows"] + [["next", "demo", log], ["readings", log], ["fit", tests]]
        return check(sys.argv[1], sys.argv[2], calls)


def check(program, source, all_calls):
    faults = 0
    for name, calls in all_calls.items():
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
