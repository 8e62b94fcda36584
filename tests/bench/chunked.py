"""Sampling and statistics of the same inputs in chunked numpy (SFC64, chunks of 8192); no model of the bench:
each result is a weighted sum, so what a model would cost comes on top. Prints milliseconds of each round."""
import json, sys, time
import numpy as np

order = json.load(sys.stdin)
kinds, outputs, trials, rounds = order["inputs"], order["outputs"], order["trials"], order["rounds"]
CHUNK = 8192
weights = np.random.default_rng(1).normal(size=(outputs, len(kinds)))


def draw(rng, d, n):
    kind = d["kind"]
    if kind == "normal":
        return d["mean"] + d["sd"] * rng.standard_normal(n)
    if kind == "half-normal":
        return d["sigma"] * np.abs(rng.standard_normal(n))
    if kind == "triangular":
        return rng.triangular(d["low"], (d["low"] + d["high"]) / 2, d["high"], n)
    if kind == "scaled-t":
        return d["mean"] + d["scale"] * rng.standard_t(d["dof"], n)
    if kind == "either":
        return np.where(rng.random(n) < 0.5, d["low"], d["high"])
    if kind == "exactly":
        return np.full(n, d["value"])
    return rng.uniform(d["low"], d["high"], n)


for _ in range(rounds):
    began = time.process_time()
    rng = np.random.Generator(np.random.SFC64(1))
    parts = []
    for start in range(0, trials, CHUNK):
        n = min(CHUNK, trials - start)
        x = np.stack([draw(rng, d, n) for d in kinds])
        parts.append(weights @ x)
    results = np.concatenate(parts, axis=1)
    for row in results:
        row.mean(), row.std(ddof=1), row.min(), row.max(), np.percentile(row, [2.5, 50, 97.5]), (row > 1).mean()
    print((time.process_time() - began) * 1000)
