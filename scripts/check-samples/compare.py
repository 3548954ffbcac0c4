"""Compares tables exported as CSV with the truth of simulated exports. usage: compare.py SAMPLES_DIR STATUS_JSON CSV_DIR"""
import csv
import datetime
import hashlib
import json
import os
import sys

samples, status_file, tables = sys.argv[1:4]
truth = json.load(open(os.path.join(samples, "truth.json"), encoding="utf-8"))
status = json.load(open(status_file, encoding="utf-8"))
failures = []
csv.field_size_limit(1 << 30)


def rows(table):
    with open(os.path.join(tables, table + ".csv"), encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def check(name, good, total, details):
    print(f"{'ok  ' if good == total and total > 0 else 'FAIL'} {name}: {good} of {total}")
    if good != total or total == 0:
        failures.append(name)
        for detail in details[:10]:
            print("       ", detail)


def sha(path):
    return hashlib.sha256(open(os.path.join(samples, path), "rb").read()).hexdigest()


# 1. Every line of every file is accounted for, and as many rows are taken as the truth says.
files = {file["sha256"]: file for file in status["files"]}
wrong = [f["path"] for f in status["files"] if f["status"] == "taken" and f["lines_read"] != f["rows_taken"] + f["rows_rejected"] + f["lines_not_data"]]
check("files whose lines balance", len(files) - len(wrong), len(files), wrong)
counted = [f for f in truth["files"] if "data_rows" in f]
wrong = []
for file in counted:
    taken = files.get(sha(file["file"]))
    if not taken or taken["status"] != "taken" or taken["rows_taken"] + taken["rows_rejected"] != file["data_rows"]:
        wrong.append((file["file"], file["data_rows"], taken))
check("files with as many data rows as were written", len(counted) - len(wrong), len(counted), wrong)
print(f"     duplicates: {status['accounting']['duplicates']}, held: {status['accounting']['held']}")

# 1b. Each recording of plates and markers is one capture; empty plates read what the truth gave them, in laboratory axes.
recorded = {row["original_sha256"]: row for row in rows("captures") if row["purpose"]}
events = {}
for row in rows("capture_events"):
    events.setdefault((row["capture_id"], row["event"]), float(row["time_s"]))
wanted, wrong, contacts, late = 0, [], 0, []
for swing in truth["swings"]:
    for device in ("plates", "motion"):
        for capture in swing["captures"].get(device, []):
            wanted += 1
            row = recorded.get(sha(capture["file"]))
            if row is None or row["purpose"] != "swing" or row["participant"] not in ("", swing["player"]):
                wrong.append((capture["file"], row))
            elif device == "motion" and not swing["practice"]:
                contacts += 1
                told = events.get((row["capture_id"], "impact"))
                if told is None or abs(told - capture["impact_s"]) > 0.003:
                    late.append((capture["file"], told, capture["impact_s"]))
check("recordings of swings that are captures", wanted - len(wrong), wanted, wrong)
check("contacts that the markers' device heard, within 3 ms", contacts - len(late), contacts, late)
means = {}
empty = {recorded[sha(f["file"])]["capture_id"]: f for f in truth["files"] if f.get("role") == "empty plates" and sha(f["file"]) in recorded}
for row in rows("curves"):
    if row["capture_id"] in empty:
        values = [v for v in json.loads(row["values"]) if v is not None]
        means[row["capture_id"], row["channel"]] = sum(values) / len(values)
zeros, wrong = 0, []
for capture, file in empty.items():
    zeros += recorded[sha(file["file"])]["purpose"] == "zero"
    for plate, (fx, fy, fz, mx, my, mz) in file["zero_reaction"].items():
        for quantity, expected, tolerance in (("force", (fx, fz, -fy), 1.0), ("moment", (mx, mz, -my), 0.1)):
            for axis, value in zip("xyz", expected):
                found = means[capture, f"{plate}_{quantity}_{axis}"]
                if abs(found - value) > tolerance:
                    wrong.append((file["file"], plate, quantity, axis, found, value))
written = sum(1 for f in truth["files"] if f.get("role") == "empty plates")
check("recordings of empty plates told as such", zeros, written, [])
check("their mean forces (1 N) and moments (0.1 N.m)", 12 * len(empty) - len(wrong), 12 * written, wrong)

# 2. Each capture of the club-and-ball sensor is there with its value.
captures = {(row["original_sha256"], int(row["original_row"])): row for row in rows("captures")}
hashes = {}
strikes, missing, practice = 0, [], []
for swing in truth["swings"]:
    for capture in swing["captures"].get("strike", []):
        strikes += 1
        key = (hashes.setdefault(capture["file"], sha(capture["file"])), capture["line"])
        row = captures.get(key)
        if row is None or abs(float(row["club_head_speed"]) - capture["club_speed_read_mps"]) > 0.0224:
            missing.append((swing["id"], capture, row and row["club_head_speed"]))
            continue
        if (row["is_practice"] == "true") != swing["practice"] and not capture.get("misread"):
            practice.append((swing["id"], row["is_practice"], swing["practice"]))
check("captures with the value that was read", strikes - len(missing), strikes, missing)
check("practice swings told from others", strikes - len(practice), strikes, practice)

# 3. Swings: one for each capture, in the right session and phase.
links = {row["capture_id"]: row["swing_id"] for row in rows("links") if row["swing_id"]}
swings = {row["swing_id"]: row for row in rows("swings")}
phases = {"baseline": "baseline", "intervention": "cue", "follow-up": "retention"}
wrong = []
for swing in truth["swings"]:
    for capture in swing["captures"].get("strike", []):
        row = captures.get((hashes[capture["file"]], capture["line"]))
        linked = swings.get(links.get(row["capture_id"], "")) if row else None
        if linked is None or linked["phase"] != phases[swing["phase"]] or linked["participant"] != swing["player"]:
            wrong.append((swing["id"], linked and linked["swing_id"], linked and linked["phase"]))
check("swings in their phase", strikes - len(wrong), strikes, wrong)
players = {player["code"] for player in truth["players"]}
made = sum(1 for row in swings.values() if row["participant"] in players)
seen = sum(1 for swing in truth["swings"] if swing["captures"].get("strike") or sum(map(len, swing["captures"].values())) > 1)
check("swings as many as were recorded, none twice", made if made <= seen else 2 * seen - made, seen, [made])

# 4. Misreads are found and do not count.
flags = rows("flags")
found, wrong = 0, []
for swing in truth["swings"]:
    for capture in swing["captures"].get("strike", []):
        if "misread" in capture:
            row = captures[(hashes[capture["file"]], capture["line"])]
            of = [f for f in flags if f["swing_id"] == links[row["capture_id"]] and f["action"] != "keep"]
            found += bool(of)
            wrong += [] if of else [(swing["id"], capture["misread"])]
check("misreads flagged and excluded", found, found + len(wrong), wrong)

# 5. The planted effects lie in the intervals.
effects = {(e["participant"], e["outcome"], e["contrast"], e["measure"]): e for e in rows("effects")}
good, wrong = 0, []
for player in truth["players"]:
    for contrast, phase in (("with-cue", "intervention"), ("kept", "follow-up")):
        planted = player["planted_effects"].get(phase, {}).get("club_speed_mps", 0.0)
        effect = effects.get((player["code"], "club_head_speed", contrast, "difference"))
        inside = effect and effect["ci_low"] and float(effect["ci_low"]) <= planted <= float(effect["ci_high"])
        good += bool(inside)
        shown = effect and f"{effect['estimate'][:6]} [{effect['ci_low'][:6]}, {effect['ci_high'][:6]}]"
        print(f"     {player['code']} {contrast}: planted {planted:.3f}, found {shown}")
        wrong += [] if inside else [(player["code"], contrast, planted, shown)]
check("planted effects inside the interval", good, good + len(wrong), wrong)

# 6. Verdicts agree with what was planted: an effect is not called absent for lack of evidence, and none is claimed where none is; a condition that
# changed together with the cue is named.
findings = {(f["participant"], f["outcome"], f["contrast"]): f for f in rows("findings") if f["scope"] == "player"}
allowed = {"responds": ("supported", "suggestive"), "unmoved": ("not shown", "cannot tell")}
good, wrong = 0, []
for player in truth["players"]:
    for contrast in ("with-cue", "kept"):
        finding = findings.get((player["code"], "club_head_speed", contrast))
        fits = finding and finding["verdict"] in allowed[player["kind"]]
        good += bool(fits)
        wrong += [] if fits else [(player["code"], player["kind"], contrast, finding and finding["verdict"])]
check("verdicts that agree with the truth", good, good + len(wrong), wrong)
good, wrong = 0, []
for player in truth["players"]:
    for contrast, phase in (("with-cue", "intervention"), ("kept", "follow-up")):
        balls = {part: {s["ball"] for s in truth["sessions"] if s["player"] == player["code"] and s["phase"] == part} for part in ("baseline", phase)}
        changed = balls["baseline"] != balls[phase]
        said = "condition-changed: the ball changed together with the phase" in (findings[(player["code"], "club_head_speed", contrast)]["reasons"] or "")
        good += changed == said
        wrong += [] if changed == said else [(player["code"], contrast, balls, said)]
check("balls that changed with the phase are named, and no others", good, good + len(wrong), wrong)

# 7. The attention stream: every reading is a capture, and none is invented.
readings = sum(1 for _ in open(os.path.join(samples, "band.ndjson"), "rb"))
taken = sum(1 for row in captures.values() if row["source"] == "band")
check("readings of the attention stream", taken, readings, [])

# 7. Recordings of all devices are joined to the right swing or to none; false ones stay alone.
link_rows = {row["capture_id"]: row for row in rows("links")}
by_file = {}
for row in captures.values():
    by_file.setdefault(row["original_sha256"], []).append(row)


def link_of(capture):
    row = captures.get((sha(capture["file"]), capture["line"])) if "line" in capture else (by_file.get(sha(capture["file"])) or [None])[0]
    return row and link_rows.get(row["capture_id"])


joined, single, wrong, swing_of = {}, 0, [], {}
for swing in truth["swings"]:
    found = {device: [link_of(c) for c in of] for device, of in swing["captures"].items()}
    known = [link["swing_id"] for device in ("strike", "motion", "plates") for link in found.get(device, []) if link and link["swing_id"]]
    anchor = known[0] if known else None
    for device, of in found.items():
        good, total = joined.get(device, (0, 0))
        for link in of:
            total += 1
            if link and link["swing_id"] and (link["swing_id"] != anchor or link["participant"] != swing["player"] or swing_of.get(anchor, swing["id"]) != swing["id"]):
                wrong.append((swing["id"], device, link["swing_id"], anchor))
            elif link and link["swing_id"]:
                good += 1
            else:
                print("     not joined:", swing["id"], device, link and (link["method"], link["residual_s"], link["confidence"]))
        joined[device] = (good, total)
    if anchor:
        swing_of[anchor] = swing["id"]
for device, (good, total) in sorted(joined.items()):
    print(f"     {device}: {good} of {total} records joined to their swing")
good, total = (sum(n) for n in zip(*joined.values()))
check("records joined right, at least 99.5 %", int(good >= 0.995 * total), 1, [f"{good} of {total}"])
check("records joined wrong: none", int(not wrong), 1, wrong)
alone = [link_of(capture) for capture in truth["false_captures"]]
check("false recordings that stay alone", sum(1 for link in alone if link and not link["swing_id"] and link["method"] == "missed-or-false"), len(alone), alone)

# 8. Clocks against the clock_rule of the truth: reading - true = offset + drift * (true - reference).
instant = lambda text: datetime.datetime.fromisoformat(text.replace("Z", "+00:00")).timestamp()
device_of = {"bay-strike": "strike", "hall-strike": "strike", "plates": "plates", "markers": "motion"}
stays = {(s["player"], s["start_utc"][:10]): s["station_stay"] for s in truth["sessions"]}
true_clock = {(c["station_stay"], c["device"]): c for c in truth["clocks"]}
offsets, drifts = {}, {}
for row in rows("clocks"):
    stay = stays.get((row["participant"], row["from"][:10]))
    if stay is None or row["method"] in ("reference", "not-made"):
        continue
    own, other = true_clock[stay, device_of[row["source"]]], true_clock[stay, device_of[row["reference_source"]]]
    start = instant(row["from"])

    def expected(reading):
        zero = instant(own["reference_utc"])
        true = zero + (reading - zero - own["offset_s"]) / (1 + own["drift_ppm"] * 1e-6)
        return true + other["offset_s"] + other["drift_ppm"] * 1e-6 * (true - zero)

    middle = (start + instant(row["to"])) / 2
    fitted = middle + float(row["offset_s"]) + float(row["drift_ppm"]) * 1e-6 * (middle - start)
    offsets.setdefault(own["device"], []).append(abs(fitted - expected(middle)))
    if row["method"] == "offset-and-drift":
        drifts.setdefault(own["device"], []).append(abs(float(row["drift_ppm"]) - ((1 + other["drift_ppm"] * 1e-6) / (1 + own["drift_ppm"] * 1e-6) - 1) * 1e6))
for device, errors in sorted(offsets.items()):
    print(f"     {device}: {len(errors)} clocks, offset off by at most {max(errors) * 1000:.1f} ms; drift, where fitted, by at most {max(drifts.get(device, [float('nan')])):.1f} ppm")
plates = offsets.get("plates", [])
check("plate clocks within 5 ms", sum(1 for e in plates if e <= 0.005), len(plates), plates)
check("plate clocks within 10 ppm", sum(1 for e in drifts.get("plates", []) if e <= 10), len(drifts.get("plates", [])), drifts.get("plates", []))

for finding in rows("findings"):
    print(f"     {finding['participant'] or 'study'} {finding['contrast']}: {finding['verdict']} - {finding['statement']}")
sys.exit(1 if failures else 0)
