"""Prints, for each table and column: table, column, type, rows, values present, sum (numbers, truths, lists) or sum of lengths (texts)."""
import json
import os
import runpy
import sys

import pandas as pd

os.chdir(sys.argv[1])
tables = runpy.run_path("load.py")["tables"]


def kind(values):
    if pd.api.types.is_datetime64_any_dtype(values):
        return "moment"
    if pd.api.types.is_bool_dtype(values):
        return "truth"
    if pd.api.types.is_integer_dtype(values):
        return "integer"
    if pd.api.types.is_float_dtype(values):
        return "number"
    present = values.dropna()
    return "list" if len(present) and present.str.startswith("[").all() else "text"


def total(values, type_):
    present = values.dropna()
    if type_ == "moment":
        return float(sum(round(moment.timestamp() * 1000) for moment in present))
    if type_ == "list":
        return sum(number for text in present for number in json.loads(text) if number is not None)
    return float(present.str.len().sum()) if type_ == "text" else float(present.astype("float64").sum())


for name in sorted(tables):
    rows = tables[name]
    for column in rows.columns:
        type_ = kind(rows[column])
        print(f"{name} {column} {type_} {len(rows)} {rows[column].notna().sum()} {total(rows[column], type_):.6e}")
