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
    "vial": [["vial", "demo", "ethanol 30, isooctane 70"], ["vial", "demo", "acetone 37, isooctane 63"],
             ["vial", "demo", "methanol 40, toluene 60"], ["vial", "demo", "ligroin 100"]],
    "examination": [["examine"], ["examine", "demo"]],
    "afterwards": [["afterwards", "demo"], ["afterwards", "demo", "--light", "strong", "--liquid", "isooctane; toluene 60, acetone 40"]],
    "cards": [["show", "ethanol", "dammar_aged"], ["show", "ligroin", "water", "copal_hard", "oil_paint_old", "toluene"]],
    "ways": [["ways", "demo"], ["ways"], ["ways", "demo", "--risk-limit", "0.0001"]],
    "explanation": [["explain", "demo", "rung 3"], ["explain", "demo", "acetone 37, isooctane 63"],
                    ["explain", "demo", "label", "rung 4"], ["explain", "demo", "flash point"]],
    "rows": [["list", "solvents"], ["list", "materials", "--having", "sphere"], ["list", "names"], ["list", "sources"], ["list", "families"],
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


# Layers without a sphere: to keep, to keep alone, to remove, and one that nobody knows.
UNJUDGED = {
    "kept": "  - {name: v, role: remove, found: dammar_aged}\n  - {name: g, role: keep, found: animal_glue}\n"
            "  - {name: p, role: keep, found: oil_paint_old}\n",
    "alone": "  - {name: v, role: remove, found: dammar_aged}\n  - {name: t, role: keep, found: egg_tempera}\n",
    "removed": "  - {name: v, role: remove, found: copal_hard}\n  - {name: p, role: keep, found: cellulose_nitrate}\n",
    "nobody": "  - {name: v, role: remove, found: unknown}\n  - {name: p, role: keep, recorded: unknown}\n",
}

FREE = ("volume_percent", "RED")  # maps whose keys are names of liquids and layers


def pruned(value):
    """The same answer with long lists cut short."""
    if isinstance(value, dict):
        return {key: pruned(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [pruned(inner) for inner in (value[:5] if value and isinstance(value[0], dict) else value)]
    return value


def key_places(value, path=()):
    """The path to every key, of lists through their first item."""
    if isinstance(value, dict):
        for key, inner in value.items():
            yield path + (key,)
            if key not in FREE:
                yield from key_places(inner, path + (key,))
    elif isinstance(value, list) and value:
        yield from key_places(value[0], path + (0,))


def with_renamed(document, path):
    """A copy in which the key at the end of the path is called otherwise."""
    if len(path) == 1:
        return {(key + "_" if key == path[0] else key): value for key, value in document.items()}
    copy = list(document) if isinstance(document, list) else dict(document)
    copy[path[0]] = with_renamed(document[path[0]], path[1:])
    return copy


def broken(document):
    """The same answer with one thing wrong, which a schema worth its name must notice."""
    short = pruned(document)
    for path in key_places(short):
        yield with_renamed(short, path), "another name for " + ".".join(map(str, path))
    bad = dict(document)
    bad["format"] = 2
    yield bad, "format 2"
    bad = dict(document)
    del bad["program"]
    yield bad, "no program"


def main():
    with tempfile.TemporaryDirectory(prefix="gentlest_json_") as folder:
        log = os.path.join(folder, "easel.log")
        with open(log, "w", encoding="utf-8") as file:
            file.write(LOG)
        tests = os.path.join(folder, "resin.csv")
        with open(tests, "w", encoding="utf-8") as file:
            file.write("solvent,dissolves\nisooctane,no\ntoluene,yes\nacetone,yes\nethanol,no\nbutanone,yes\n"
                       "ethyl_acetate,yes\nn_butanol,no\nxylene,yes\n")
        table = os.path.join(folder, "bench.csv")
        with open(table, "w", encoding="utf-8") as file:
            file.write("mixture,removal,date\nisooctane 100,no effect,2026-03-14\nacetone 100,fully removed,2026-03-14\n")
        new = os.path.join(folder, "new.log")
        calls = {**CALLS, "report": [["report", "demo", log]],
                 "explanation_of_next": [["explain", "demo", "next"], ["explain", "demo", "next", "--log", log]]}
        for name, layers in UNJUDGED.items():
            job = os.path.join(folder, name + ".yaml")
            with open(job, "w", encoding="utf-8") as file:
                file.write("gentlest_job: 1\nlayers:\n" + layers + "shelf: [isooctane, ethanol, acetone, diacetone_alcohol]\n")
            for kind, words in (("ladder", []), ("comparison", []), ("mixture", ["acetone"]), ("vial", ["acetone"])):
                command = "compare" if kind == "comparison" else kind
                calls[kind] = calls[kind] + [[command, job] + words]
        calls["calibration"] = [["calibrate", os.path.join(sys.argv[2], "tests/published/score_sets")]]
        calls["rows"] = CALLS["rows"] + [["next", "demo", log], ["readings", log], ["fit", tests],
                                         ["record", "demo", new, "mixture=isooctane 100", "removal=no effect",
                                          "date=2026-03-14"],
                                         ["import", "demo", new, table], ["new", os.path.join(folder, "easel.yaml")]]
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
            if not validator.is_valid(pruned(document)):
                print("{}: cut short, the answer is not valid".format(" ".join(args)))
                faults += 1
            for error in list(validator.iter_errors(document))[:5]:
                print("{}: {} at {}".format(" ".join(args), error.message[:200], list(error.absolute_path)))
                faults += 1
            for bad, what in broken(document):
                if validator.is_valid(bad):
                    print("{}: the schema accepts a broken answer: {}".format(" ".join(args), what))
                    faults += 1
    unasked = {name[:-len(".schema.json")] for name in os.listdir(os.path.join(source, "docs/schema"))} - set(all_calls)
    for name in unasked:
        print("no answer is checked against {}".format(name))
    faults += len(unasked)
    print("{} faults".format(faults))
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
