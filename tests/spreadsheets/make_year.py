#!/usr/bin/env python3
"""Writes dips-and-pull-ups.csv: a year as one lifter keeps it. Nobody's real numbers.

No column for the athlete, no ladder, day-first dates, kilograms at home and pounds at the gym on Saturdays, a column of equal
sets, a byte-order mark, CRLF, notes with commas, quotes and line breaks. One deload every eighth week, three weeks away in June.
The plan: a one-repetition maximum on system load that grows by a fraction of a percent a week, loads rounded to what can be
hung, sets that end where common practice ends them.

usage: make_year.py > dips-and-pull-ups.csv
"""
import csv
import datetime
import io
import random
import sys

LB = .45359237
START = datetime.date(2025, 1, 6)
NOTES = [
    "slow on the way down", "elbows fine, wrists a bit stiff", 'felt "light" today', "chain slipped, put a knot in",
    "bad sleep,\r\nbut it moved", "new belt", "filmed it: depth ok, last rep slow", "- skipped warm-up", "=PR? check", "gym, lb plates",
]

rng = random.Random(1912)
out = io.StringIO()
rows = csv.writer(out, lineterminator="\r\n")
rows.writerow(["Date", "Exercise", "Sets", "Reps", "Belt kg", "Belt lb", "BW kg", "RIR", "Result", "Mood", "Notes"])


def row(day, what="", sets="", reps="", kg="", lb="", bw="", rir="", result="", mood="", note=""):
    rows.writerow([day.strftime("%d/%m/%Y"), what, sets, reps, kg, lb, bw, rir, result, mood, note])


def note(chance):
    return rng.choice(NOTES) if rng.random() < chance else ""


body, dip, pull = 78.4, 121.0, 104.0  # bodyweight and one-repetition maxima on system load, kg
for week in range(52):
    monday = START + datetime.timedelta(weeks=week)
    away, deload = 22 <= week <= 24, week % 8 == 7
    if away:
        dip, pull = dip * .985, pull * .985
        continue
    body += rng.gauss(.06 if week < 30 else -.12, .25)
    dip, pull = dip * (1 + rng.gauss(.004, .002)), pull * (1 + rng.gauss(.0035, .002))
    row(monday, bw=f"{body:.1f}", mood=rng.choice(["good", "ok", "tired", ""]), note=note(.08))

    def belt(best, reps, left, step):
        """Load for so many repetitions with so many left, by Epley's formula, in steps that can be hung."""
        system = (.85 if deload else 1) * best / (1 + (reps + left) / 30)
        return max(0, round((system - body) / step) * step)

    for day, session in ((0, "dips"), (2, "pull-ups"), (5, "gym")):
        date = monday + datetime.timedelta(days=day)
        mood = rng.choice(["good", "ok", "ok", "tired", ""])
        if rng.random() < .04:
            continue  # life happens
        if session == "dips":
            heavy = belt(dip, 5, 1, 1.25)
            row(date, "Dip", 2 if deload else 3, 5, f"{heavy:g}", rir="4" if deload else "1", mood=mood,
                note="deload week" if deload else note(.2))
            row(date, "pull up", 3, 6, f"{belt(pull, 6, 3, 1.25):g}", rir="3", mood=mood)
            if week % 4 == 2:
                missed = rng.random() < .4
                row(date, "dip", "", 1 if missed else 2, f"{belt(dip, 2, 0, 1.25) + 2.5:g}", rir="" if missed else "0",
                    result="fail" if missed else "", mood=mood, note=note(.5))
        elif session == "pull-ups":
            row(date, "Pull Up", 2 if deload else 4, 3, f"{belt(pull, 3, 1, 1.25):g}", rir="1.5", mood=mood, note=note(.2))
            row(date, "Dip", 3, 8, f"{belt(dip, 8, 2, 1.25):g}", mood=mood)
        else:
            row(date, "Dip", 3, 5, lb=f"{belt(dip, 5, 2, 2.5 * LB) / LB:.1f}".removesuffix(".0"), rir="2", mood=mood, note=note(.3))
            row(date, "Chin-Up", 2, 8, lb="" if deload else "10", mood=mood)
    if week % 13 == 12:
        rows.writerow([""] * 11)  # an empty line between the quarters

sys.stdout.buffer.write(b"\xef\xbb\xbf" + out.getvalue().encode("utf-8"))
