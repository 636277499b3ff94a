"""Counts tip-ins in a recorded drive: the pedal at 45 % or more, until below 35 %, for a second.

Written apart from the program it checks: plain csv, no import rules. Usage: count_tip_ins.py FILE
"""
import csv
import sys


def seconds(text):
    h, m, s = text.split(":")
    return 3600 * int(h) + 60 * int(m) + float(s)


count = 0
start = last = None
previous = None
with open(sys.argv[1], encoding="utf-8", errors="replace", newline="") as f:
    rows = list(csv.reader(f))
head = rows[0]
pedal = next(i for i, h in enumerate(head) if "Pedal Position D" in h)
rpm = next(i for i, h in enumerate(head) if "RPM" in h)
for row in rows[1:]:
    if len(row) <= pedal or row[pedal] == "" or row[rpm] == "":
        continue
    t = seconds(row[0])
    if previous is not None and t <= previous:
        continue  # a backward step of the clock
    pause = previous is not None and t - previous > 2.0
    value = float(row[pedal])
    if start is not None and (pause or value < 35.0):
        count += last - start >= 1.0
        start = None
    if start is None and value >= 45.0 and float(row[rpm]) > 500.0:
        start = t
    last = previous = t
if start is not None:
    count += last - start >= 1.0
print(count)
