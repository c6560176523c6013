# SPDX-License-Identifier: GPL-3.0-or-later
"""validate.py SCHEMA DOCUMENTS: "valid" or "invalid" for each line, a JSON document, of DOCUMENTS.

An outside judge for the schema: python3-jsonschema, draft 2020-12, formats asserted.
"""
import functools
import json
import re
import sys

from jsonschema import Draft202012Validator, FormatChecker, ValidationError
from jsonschema.validators import extend


@functools.lru_cache(maxsize=None)
def ecma(pattern):
    # patterns are ECMA-262: there $ is the very end, in Python also the place before a last newline
    return re.compile(re.sub(r"\$\Z", r"\\Z", pattern))


def pattern(validator, pattern, instance, schema):
    if validator.is_type(instance, "string") and not ecma(pattern).search(instance):
        yield ValidationError(f"{instance!r} does not match {pattern!r}")


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        schema = json.load(file)
    Draft202012Validator.check_schema(schema)
    judge = extend(Draft202012Validator, {"pattern": pattern})(
        schema, format_checker=FormatChecker(["date"])
    )
    with open(sys.argv[2], encoding="utf-8") as documents:
        for line in documents:
            print("valid" if judge.is_valid(json.loads(line)) else "invalid")


if __name__ == "__main__":
    main()
