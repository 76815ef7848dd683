"""What to add to a pot, by scipy's bounded solvers, tried from several starts over every choice of components.

Needs numpy, scipy and colour-science 0.4.7; reads ink_weights_10nm.csv, writes ink_corrections.json. Thirty
cases with bounds only, by optimize.least_squares (trf); thirty with a full pot, a sheet's limit and a limit of all
pigment too, by optimize.minimize (SLSQP). In half of each the colour is looked at in the pot, in half printed.
The theory is written here anew, and the differences are checked with colour-science.
"""
import itertools
import json
import math
import warnings
from pathlib import Path

warnings.filterwarnings("ignore")
import colour
import numpy as np
from scipy.optimize import least_squares, minimize

HERE = Path(__file__).parent
NM = np.arange(400, 701, 10)
X = (NM - 400) / 300
SPARING = 0.1


def weights():
    rows = [line.split(",") for line in (HERE / "ink_weights_10nm.csv").read_text().split() if line.startswith("D65")]
    w = np.array([[float(v) for v in row[2:]] for row in rows])
    return w / w.sum(axis=0)


W = weights()


def bump(at, width):
    return np.exp(-(((X - at) / width) ** 2))


def step(at, width):
    return 1 / (1 + np.exp(-(X - at) / width))


# Invented: a white, a black, four pigments in a base, and a clear base. K and S for one film.
COMPONENTS = {
    "white": (0.015 + 0.2 * np.exp(-X * 18), 2.6 - 0.3 * X),
    "black": (60 + 10 * X, 0.4 + 0 * X),
    "yellow": (0.1 + 30 * (1 - step(0.32, 0.03)), 1.2 - 0.2 * X),
    "red": (0.3 + 34 * (1 - step(0.62, 0.035)), 0.9 + 0.2 * X),
    "blue": (1.5 + 38 * bump(0.75, 0.24), 0.5 + 0.4 * (1 - X)),
    "green": (2 + 26 * bump(0.92, 0.25) + 22 * bump(0.05, 0.18), 0.6 + 0 * X),
    "clear": (0.004 + 0 * X, 0.02 + 0 * X),
}
GARMENTS = {"white shirt": 0.82 - 0.05 * np.exp(-X * 10), "violet shirt": 0.05 + 0.13 * bump(0.1, 0.15) + 0.08 * step(0.9, 0.05)}
NAMES = list(COMPONENTS)
K = np.array([np.round(COMPONENTS[n][0], 6) for n in NAMES])
S = np.array([np.round(COMPONENTS[n][1], 6) for n in NAMES])
GARMENTS = {n: np.round(g, 6) for n, g in GARMENTS.items()}


def look(k, s, case):
    if case["garment"] is None:
        q = k / s
        r = 1 + q - np.sqrt(q * q + 2 * q)
    else:
        films, g = case["films"], GARMENTS[case["garment"]]
        a = 1 + k / s
        b = np.sqrt(a * a - 1)
        coth = 1 / np.tanh(b * s * films)
        r = (1 - g * (a - b * coth)) / (a - g + b * coth)
    t = r @ W
    f = np.where(t > (6 / 29) ** 3, np.cbrt(t), t * (29 / 6) ** 2 / 3 + 4 / 29)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def de_parts(lab1, lab2):
    """CIEDE2000 as three numbers: the quadratic form's Cholesky root."""
    (l1, a1, b1), (l2, a2, b2) = lab1, lab2
    cm = (math.hypot(a1, b1) + math.hypot(a2, b2)) / 2
    g = 1.5 - 0.5 * math.sqrt(cm**7 / (cm**7 + 25**7))
    a1, a2 = a1 * g, a2 * g
    c1, c2 = math.hypot(a1, b1), math.hypot(a2, b2)
    h1, h2 = math.degrees(math.atan2(b1, a1)) % 360, math.degrees(math.atan2(b2, a2)) % 360
    dh = (h2 - h1 + 180) % 360 - 180
    hm = h1 + dh / 2
    lm, cm = (l1 + l2) / 2, (c1 + c2) / 2
    cos = lambda d: math.cos(math.radians(d))
    t = 1 - 0.17 * cos(hm - 30) + 0.24 * cos(2 * hm) + 0.32 * cos(3 * hm + 6) - 0.2 * cos(4 * hm - 63)
    sl = 1 + 0.015 * (lm - 50) ** 2 / math.sqrt(20 + (lm - 50) ** 2)
    theta = 30 * math.exp(-(((hm % 360 - 275) / 25) ** 2))
    rt = -2 * math.sqrt(cm**7 / (cm**7 + 25**7)) * math.sin(math.radians(2 * theta))
    l = (l2 - l1) / sl
    c = (c2 - c1) / (1 + 0.045 * cm)
    h = 2 * math.sqrt(c1 * c2) * math.sin(math.radians(dh / 2)) / (1 + 0.015 * cm * t)
    root = np.linalg.cholesky([[1, rt / 2], [rt / 2, 1]]).T @ [c, h]
    return np.array([l, root[0], root[1]])


def mixture(case, chosen=(), x=()):
    """x in parts of the pot."""
    amounts = np.array(case["pot"], float) / sum(case["pot"])
    k, s = amounts @ K, amounts @ S
    whole = 1 + sum(x)
    for c, part in zip(chosen, x):
        k, s = k + part * K[c], s + part * S[c]
    return k / whole, s / whole


def misses(case, chosen, x):
    lab = look(*mixture(case, chosen, x), case)
    return np.append(de_parts(case["target"], lab), SPARING * sum(x))


def cost(case, chosen, x):
    return float((misses(case, chosen, x) ** 2).sum())


def limits(case, chosen):
    """Rows (a, b) with a·x <= b beside the bounds."""
    total = sum(case["pot"])
    rows = [(np.ones(len(chosen)), case["room"] / total)]
    for i, c in enumerate(chosen):
        if case["most"][c] is not None:
            a = -case["most"][c] * np.ones(len(chosen))
            a[i] += 1
            rows.append((a, max(0, case["most"][c] - case["pot"][c] / total)))
    if case["all_pigment"] is not None:
        pigment = np.array([NAMES[c] not in ("white", "clear") for c in chosen], float)
        now = sum(g for g, n in zip(case["pot"], NAMES) if n not in ("white", "clear")) / total
        rows.append((pigment - case["all_pigment"], max(0, case["all_pigment"] - now)))
    return rows


def solve(case, chosen):
    total = sum(case["pot"])
    high = np.array([min(case["stock"][c], case["room"]) / total for c in chosen])
    best = (cost(case, chosen, np.zeros(len(chosen))), np.zeros(len(chosen)))
    rows = limits(case, chosen)
    for start in (1e-4, 3e-3, 0.05, 0.4):
        x0 = np.minimum(start, 0.5 * high)
        for a, b in rows:
            if a @ x0 > b:
                x0 = x0 * max(0, b) / (a @ x0)
        if case["bounds_only"]:
            found = least_squares(lambda x: misses(case, chosen, x), np.clip(x0, 1e-9, high * 0.999), bounds=(0, high), x_scale=np.maximum(x0, 1e-3),
                                  xtol=1e-12, ftol=1e-12, gtol=1e-12, max_nfev=60)
        else:
            # The unknowns are brought to like size, which SLSQP needs.
            scale = np.maximum(x0, 1e-3)
            found = minimize(lambda y: cost(case, chosen, y * scale), x0 / scale, method="SLSQP", bounds=[(0, h / s) for h, s in zip(high, scale)],
                             constraints=[{"type": "ineq", "fun": lambda y, a=a, b=b: b - a @ (y * scale)} for a, b in rows],
                             options={"ftol": 1e-12, "maxiter": 80})
            found.x = found.x * scale
        x = np.clip(found.x, 0, high)
        if all(a @ x <= b + 1e-9 for a, b in rows) and cost(case, chosen, x) < best[0]:
            best = (cost(case, chosen, x), x)
    return best


def main():
    rng = np.random.default_rng(20)
    cases = []
    while len(cases) < 60:
        n = len(cases)
        bounds_only = n < 30
        base = rng.choice([0, 6]) if n % 2 else 0
        pot = np.zeros(len(NAMES))
        pot[base] = rng.uniform(300, 900)
        for c in rng.choice([1, 2, 3, 4, 5], 2, replace=False):
            pot[c] = np.exp(rng.uniform(np.log(1), np.log(40)))
        pot = np.round(pot, 1)
        case = {
            "bounds_only": bool(bounds_only),
            "garment": None if n % 2 == 0 else ["white shirt", "violet shirt"][n // 2 % 2],
            "films": float(round(rng.uniform(0.7, 2.5), 2)),
            "pot": pot.tolist(),
            "room": 1e6 if bounds_only else float(round(rng.uniform(2, 250), 1)),
            "stock": [float(round(v, 1)) for v in rng.uniform(3, 400, len(NAMES))],
            "most": [None] * 7 if bounds_only else [None, 0.04, 0.08, 0.08, 0.06, 0.08, None],
            "all_pigment": None if bounds_only else 0.1,
        }
        if bounds_only:
            case["stock"] = [v * (0.05 if n % 3 == 0 else 1) for v in case["stock"]]
        here = look(*mixture(case), case)
        if n % 4 < 3:
            # A target that additions can reach or nearly: the pot with something in it, a little off.
            chosen = tuple(rng.choice(len(NAMES), 2, replace=False))
            x = np.exp(rng.uniform(np.log(0.002), np.log(0.15), 2))
            target = look(*mixture(case, chosen, x), case) + rng.normal(0, 0.5, 3)
        else:
            target = here + rng.normal(0, 6, 3)
        case["target"] = [round(float(np.clip(target[0], 1, 99)), 3)] + [round(float(v), 3) for v in target[1:]]
        before = math.sqrt((de_parts(case["target"], here) ** 2).sum())
        assert abs(before - colour.delta_E(np.array(case["target"]), here, method="CIE 2000")) < 1e-9
        if not 1.0 < before < 40:
            continue
        case["before"] = before
        case["best"] = []
        for size in (1, 2, 3):
            tried = [(solve(case, chosen), chosen) for chosen in itertools.combinations(range(len(NAMES)), size)]
            (least, x), chosen = min(tried, key=lambda t: t[0][0])
            lab = look(*mixture(case, chosen, x), case)
            case["best"].append({"cost": math.sqrt(least), "components": [NAMES[c] for c in chosen],
                                 "grams": [float(g) for g in x * sum(case["pot"])],
                                 "after": float(colour.delta_E(np.array(case["target"]), lab, method="CIE 2000"))})
        cases.append(case)
        print(len(cases), round(before, 2), [round(b["cost"], 4) for b in case["best"]], [b["components"] for b in case["best"]], flush=True)
    with open(HERE / "ink_corrections.json", "w") as f:
        components = [{"name": n, "k": K[i].tolist(), "s": S[i].tolist()} for i, n in enumerate(NAMES)]
        garments = {n: g.tolist() for n, g in GARMENTS.items()}
        f.write('{"components": ' + json.dumps(components) + ',\n"garments": ' + json.dumps(garments) + ',\n"cases": [\n')
        f.write(",\n".join(json.dumps(case) for case in cases) + "\n]}\n")


if __name__ == "__main__":
    main()
