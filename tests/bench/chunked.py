"""The wall clock's two radial needs in chunked numpy (SFC64, chunks of 8192): the same model as naive-clock.mjs,
a column an input. Reads inputs, limits, trials and rounds as JSON; prints processor milliseconds and statistics a round."""
import json, sys, time
import numpy as np

order = json.load(sys.stdin)
CHUNK, L, H, THICK, TOUCH = 8192, 280.5, 180.0, 24.0, 12.0


def draw(rng, d, n):
    kind = d["kind"]
    if kind == "normal":
        return d["mean"] + d["sd"] * rng.standard_normal(n)
    if kind == "half-normal":
        return d["sigma"] * np.abs(rng.standard_normal(n))
    if kind == "either":
        return np.where(rng.random(n) < 0.5, d["low"], d["high"])
    if kind == "exactly":
        return np.full(n, d["value"])
    return d["low"] + (d["high"] - d["low"]) * rng.random(n)


def seat(v, side):
    front = side == "front-up"
    thick = THICK + v["thickness"]
    leans = v["machine-lean"] / (1 + v["scale/y"])
    radius = v["cutter-radius/flat 6"]
    face = -(radius + v["milled-face/fence"])
    fence = face - v[f"give/{side}/fence"]
    deeper = (radius + v["milled-face/side-first" if front else "milled-face/side-second"]) * np.sqrt(1 + leans * leans)
    stop, slope = (-deeper, leans) if front else (-v["scale/x"] * L - deeper, -leans)
    felt = (1 if front else -1) * (TOUCH - thick / 2)
    p1, p2 = (30.0, 250.0) if front else (30.5, 250.5)
    e1 = v["bump/lower/30"] + v[f"seat-gap/{side}/fence-{1 if front else 2}"]
    e2 = v["bump/lower/250"] + v[f"seat-gap/{side}/fence-{2 if front else 1}"]
    qb = face + 90 / np.sqrt(1 + slope * slope)
    qa = stop + slope * qb - v[f"give/{side}/side"]
    gap = v["seat-gap/front-up/side-1" if front else "seat-gap/back-up/side2-1"]
    out = v["bump/left/90"] + gap + felt * v["bevel/left"]
    low, left = 4 * v["crook/lower"] / L, 4 * v["crook/left"] / H
    c, s, a, b = 1.0, 0.0, 0.0, 0.0
    for _ in range(3):
        t1 = c * p1 + s * fence - a
        t2 = c * p2 + s * fence - a
        o1 = low * t1 * (L - t1) + e1
        s = (low * t2 * (L - t2) + e2 - o1) / (p2 - p1)
        c = np.sqrt(1 - s * s)
        next_b = c * fence - s * p1 + o1 + felt * v["bevel/lower"]
        along = c * qb - s * qa
        u = along - b
        far = c * qa + s * qb - v["square"] * along + left * u * (H - u) + out
        a, b = far + v["square"] * next_b, next_b
    return c, s, a, b


def land(v, side, pose, cut, x, y):
    c, s, back_a, back_b = pose
    above = THICK + v["thickness"] - TOUCH
    px = x if side == "front-up" else L - x
    dx = v["scale/x"] * px + v["machine-lean"] * y + v[f"repeatability/{cut}/x"] + v[f"lost-motion/{cut}/x"] + v["cutter-lean/x"] * above
    dy = v["scale/y"] * y + v[f"repeatability/{cut}/y"] + v[f"lost-motion/{cut}/y"] + v["cutter-lean/y"] * above
    a, b = (x + dx if side == "front-up" else x - dx), y + dy
    return c * a + s * b - back_a, c * b - s * a - back_b


def misses(v):
    poses = {side: seat(v, side) for side in ("front-up", "back-up")}
    for one, other, x, y in (
        ("feature shaft hole", "feature movement pocket", 140.0, 90.0),
        ("front of corner check", "back of corner check", 70.0, 120.0),
    ):
        fx, fy = land(v, "front-up", poses["front-up"], one, x, y)
        tx, ty = land(v, "back-up", poses["back-up"], other, x, y)
        yield np.sqrt((tx - fx) ** 2 + (ty - fy) ** 2)


for turn in range(order["rounds"]):
    began = time.process_time()
    rng = np.random.Generator(np.random.SFC64(turn + 1))
    results = np.empty((2, order["trials"]))
    for start in range(0, order["trials"], CHUNK):
        n = min(CHUNK, order["trials"] - start)
        v = {name: draw(rng, d, n) for name, d in order["inputs"]}
        for k, miss in enumerate(misses(v)):
            results[k, start : start + n] = miss
    told = []
    for row, limit in zip(results, order["limits"]):
        low, high = np.percentile(row, [2.5, 97.5])
        told.append({"mean": row.mean(), "sd": row.std(ddof=1), "low": low, "high": high, "good": (row <= limit).mean(), "least": row.min(), "most": row.max()})
    print(json.dumps({"ms": (time.process_time() - began) * 1000, "told": told}))
