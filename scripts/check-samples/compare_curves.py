"""Compares what was measured on curves with the truth of simulated exports. usage: compare_curves.py SAMPLES_DIR CSV_DIR

Each quantity is compared at the swings to which its own recording was linked; a wrong or missing link is counted by itself and not as a wrong value.
"""
import csv
import hashlib
import json
import math
import os
import sys

samples, tables = sys.argv[1:3]
truth = json.load(open(os.path.join(samples, "truth.json"), encoding="utf-8"))
csv.field_size_limit(1 << 30)
failures = []


def rows(table):
    with open(os.path.join(tables, table + ".csv"), encoding="utf-8", newline="") as file:
        yield from csv.DictReader(file)


def sha(path):
    return hashlib.sha256(open(os.path.join(samples, path), "rb").read()).hexdigest()


captures = {}
for row in rows("captures"):
    captures.setdefault((row["original_sha256"], row["source"]), []).append(row["capture_id"])
links = {row["capture_id"]: row["swing_id"] for row in rows("links") if row["swing_id"]}
values = {(row["swing_id"], row["variable"]): row for row in rows("curve_measures")}
events = {(row["swing_id"], row["event"]): row for row in rows("swing_events")}
motion_rate, plate_rate = 240.0, 500.0


def swing_of(swing, device, source):
    """The swing to which the recording of a device was linked, and the swing of the marks or the sensor it should be."""
    found = [links.get(c) for capture in swing["captures"].get(device, []) for c in captures.get((sha(capture["file"]), source), [])]
    return found[0] if found else None


def report(name, errors, limit, share, unit):
    inside = sum(1 for _, error in errors if abs(error) <= limit)
    if not errors:
        print(f"FAIL {name}: nothing was measured")
        failures.append(name)
        return
    worst = max(errors, key=lambda pair: abs(pair[1]))
    mean = sum(e for _, e in errors) / len(errors)
    rms = math.sqrt(sum(e * e for _, e in errors) / len(errors))
    good = inside >= share * len(errors)
    print(f"{'ok  ' if good else 'FAIL'} {name}: {inside} of {len(errors)} within {limit} {unit}; mean {mean:+.3f}, rms {rms:.3f}, worst {worst[1]:+.3f} ({worst[0]})")
    if not good:
        failures.append(name)


def errors(device, source, variable, key, scale=1.0, offset=0.0, relative=False, truth_scale=1.0):
    found = []
    for swing in truth["swings"]:
        true = swing["true"].get(key)
        where = swing_of(swing, device, source)
        row = values.get((where, variable)) if where else None
        if true is None or row is None or row["value"] == "":
            continue
        expected = true * truth_scale + offset
        error = float(row["value"]) * scale - expected
        found.append((swing["id"], 100 * error / expected if relative else error))
    return found


links_good = {"motion": [0, 0], "plates": [0, 0]}
for swing in truth["swings"]:
    marks, plates = swing_of(swing, "motion", "markers"), swing_of(swing, "plates", "plates")
    strike = [links.get(c) for capture in swing["captures"].get("strike", []) for sensor in ("bay-strike", "hall-strike") for c in captures.get((sha(capture["file"]), sensor), [])]
    for device, where in (("motion", marks), ("plates", plates)):
        if swing["captures"].get(device) and swing["captures"].get("strike"):
            links_good[device][1] += 1
            links_good[device][0] += where is not None and where in strike
for device, (good, total) in links_good.items():
    print(f"     {device} linked to the swing of its strike: {good} of {total}")

M, P = ("motion", "markers"), ("plates", "plates")
# Most of the values must be inside; the scatter of invented noise puts a few outside.
most = 0.95
report("club speed from marks", errors(*M, "club_head_speed", "club_speed_mps", relative=True), 1.0, most, "%")
report("attack angle", errors(*M, "attack_angle", "approach_vertical_deg"), 1.5, most, "deg")
report("club path", errors(*M, "club_path_angle", "path_horizontal_deg"), 1.5, most, "deg")
report("grip speed peak", errors(*M, "grip_speed_peak", "grip_speed_peak_mps", relative=True), 2.0, most, "%")
report("time of grip speed peak", errors(*M, "grip_speed_peak_before_impact", "grip_speed_peak_time_s", scale=-1, truth_scale=1000), 10, most, "ms")
report("angle at grip peak", errors(*M, "forearm_shaft_grip_peak", "lag_at_grip_peak_deg", scale=-1, offset=-180), 1.5, most, "deg")
report("top", errors(*M, "t_top", "downswing_s", scale=-1000, truth_scale=1000), 1000 / motion_rate, most, "ms")
starts = []
for swing in truth["swings"]:
    row = values.get((swing_of(swing, *M), "t_start"))
    if row and row["value"]:
        starts.append((swing["id"], 1000 * (float(row["value"]) + swing["true"]["backswing_s"] + swing["true"]["downswing_s"])))
report("start (truth: first movement; measured: last below 0.1 m/s)", starts, 100, most, "ms")
report("pelvis drop", errors(*M, "pelvis_drop", "pelvis_lowest_m", truth_scale=1000), 3, most, "mm")
report("time of lowest pelvis", errors(*M, "pelvis_low_time", "pelvis_lowest_time_s", truth_scale=1000), 10, most, "ms")
for place in ("address", "top", "impact"):
    report(f"trail knee at {place}", errors(*M, f"trail_knee_flexion_{place}", f"trail_knee_flexion_{place}_deg"), 1.5, most, "deg")
report("body weight", errors(*P, "body_weight", "body_weight_n", relative=True), 1.0, most, "%")
report("least vertical force", errors(*P, "unweight_min_total", "fz_min_bw", scale=100, truth_scale=100), 1.0, most, "% BW")
report("time of least vertical force", errors(*P, "unweight_min_time", "fz_min_time_s", truth_scale=1000), 10, most, "ms")
report("peak vertical force", errors(*P, "vertical_peak_total", "fz_peak_bw", scale=100, truth_scale=100), 1.0, most, "% BW")
report("time of peak vertical force", errors(*P, "vertical_peak_total_time", "fz_peak_time_s", truth_scale=1000), 10, most, "ms")
report("pivot moment", errors(*P, "pivot_moment_peak", "torque_system_peak_nm"), 2, most, "N.m")
report("lead share at top", errors(*P, "lead_share_top", "lead_share_top", truth_scale=100), 1.5, most, "%")
report("lead share at impact", errors(*P, "lead_share_impact", "lead_share_impact", truth_scale=100), 1.5, most, "%")

curves = {}
wanted = {"total_force_x", "total_free_moment", "total_force_y", "grip_speed"}
for row in rows("swing_curves"):
    if row["channel"] in wanted:
        curves[(row["swing_id"], row["channel"])] = row


def samples_of(row):
    return [float(x) if x not in ("", "null", "NaN") and x is not None else math.nan for x in json.loads(row["values"].replace("NaN", "null")) or []] if row["values"].startswith("[") else \
        [float(x) if x else math.nan for x in row["values"].split(";")]


# A peak is looked for in recordings that last until impact: what came after the end of a shorter one nobody knows.
peaks, times, moments, moment_times, short = [], [], [], [], set()
for swing in truth["swings"]:
    where = swing_of(swing, *P)
    top = -swing["true"]["downswing_s"]
    for channel, value_key, time_key, factor, found, when in (
            ("total_force_x", "fx_peak_bw", "fx_peak_time_s", 100, peaks, times),
            ("total_free_moment", "free_moment_peak_nm", "free_moment_peak_time_s", 1, moments, moment_times)):
        row = curves.get((where, channel))
        if row is None:
            continue
        data, rate, t0 = samples_of(row), float(row["sample_rate_hz"]), float(row["t0_s"])
        if t0 + (len(data) - 1) / rate < 0:
            short.add(swing["id"])
            continue
        inside = [(x, t0 + i / rate) for i, x in enumerate(data) if not math.isnan(x) and top <= t0 + i / rate <= 0.05]
        if inside:
            high, at = max(inside)
            found.append((swing["id"], factor * (high - swing["true"][value_key])))
            when.append((swing["id"], 1000 * (at - swing["true"][time_key])))
print(f"     recordings of plates that end before impact: {len(short)} ({', '.join(sorted(short))})")
report("peak force to the target", peaks, 1.0, most, "% BW")
report("its time", times, 10, most, "ms")
report("peak of the summed free moments", moments, 1.5, most, "N.m")
report("its time", moment_times, 10, most, "ms")

# Impact on the plates' own time axis, where the truth says at which moment of the recording it lies.
axes = []
for swing in truth["swings"]:
    row = curves.get((swing_of(swing, *P), "total_force_y"))
    for capture in swing["captures"].get("plates", []):
        if row is not None and "impact_ms" in capture:
            axes.append((swing["id"], -1000 * float(row["t0_s"]) - capture["impact_ms"]))
report("impact on the plates' time", axes, 1000 / plate_rate, most, "ms")
axes = []
for swing in truth["swings"]:
    row = curves.get((swing_of(swing, *M), "grip_speed"))
    for capture in swing["captures"].get("motion", []):
        if row is not None and "impact_s" in capture:
            axes.append((swing["id"], 1000 * (-float(row["t0_s"]) - capture["impact_s"])))
report("impact on the marks' time", axes, 1000 / motion_rate, most, "ms")
reasons = {}
for row in values.values():
    if row["reason"]:
        reasons[row["reason"]] = reasons.get(row["reason"], 0) + 1
for reason, count in sorted(reasons.items(), key=lambda pair: -pair[1])[:12]:
    print(f"     not computed {count}: {reason}")
sys.exit(1 if failures else 0)
