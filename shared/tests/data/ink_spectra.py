"""Tables and check values for the ink bench's spectra.

Needs numpy, scipy and colour-science 0.4.7, whose tables of the CIE 1931 2 degree observer and of the
illuminants are those of CIE 015. Writes, beside itself:
  ink_weights_10nm.csv    weights from reflectance at 400..700 nm in steps of 10 nm to X/Xn, Y/Yn, Z/Zn
  ink_spectra_lab.csv     invented reflectances and their Lab under D65, by another way than the weights
  ink_smoothest.csv       smoothest reflectances of a few colours, by a general constrained minimiser
"""
import warnings

warnings.filterwarnings("ignore")
import colour
import numpy as np
from pathlib import Path
from scipy.optimize import minimize

HERE = Path(__file__).parent
NM = np.arange(400, 701, 10)
CMFS = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"]


def weights(name):
    """Weighting factors of ASTM E308 at 10 nm; what lies beyond 400 and 700 nm counts as the end band."""
    from colour.colorimetry import tristimulus_weighting_factors_ASTME2022 as factors

    wide = colour.SpectralShape(360, 780, 10)
    cmfs = CMFS.copy().align(colour.SpectralShape(360, 780, 1))
    light = colour.SDS_ILLUMINANTS[name].copy().align(colour.SpectralShape(360, 780, 1))
    full = factors(cmfs, light, wide)
    nm = wide.wavelengths
    out = np.array([full[nm == at][0] for at in NM])
    out[0] += full[nm < 400].sum(axis=0)
    out[-1] += full[nm > 700].sum(axis=0)
    return out / out[:, 1].sum()


def lab(xyz_over_white):
    f = np.where(xyz_over_white > (6 / 29) ** 3, np.cbrt(xyz_over_white), xyz_over_white * (29 / 6) ** 2 / 3 + 4 / 29)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def invented(seed=4, n=24):
    """Smooth curves like those of inks and cloth: steps, dips and slopes between 0.02 and 0.95."""
    rng = np.random.default_rng(seed)
    curves = []
    for _ in range(n):
        at, width = rng.uniform(420, 680), rng.uniform(12, 60)
        low, high = rng.uniform(0.02, 0.3), rng.uniform(0.3, 0.95)
        step = low + (high - low) / (1 + np.exp(-(NM - at) / width * rng.choice([-1, 1])))
        dip = 1 - rng.uniform(0, 0.7) * np.exp(-((NM - rng.uniform(420, 680)) / rng.uniform(20, 70)) ** 2)
        curves.append(np.clip(step * dip, 0.02, 0.95))
    return np.round(np.array(curves), 4)


if __name__ == "__main__":
    tables = {name: weights(name) for name in ("D65", "A", "D50", "FL11")}
    with open(HERE / "ink_weights_10nm.csv", "w") as f:
        f.write("illuminant,nm,x,y,z\n")
        for name, t in tables.items():
            for nm, row in zip(NM, t):
                f.write(f"{name},{nm},{row[0]:.8f},{row[1]:.8f},{row[2]:.8f}\n")
    w = tables["D65"] / tables["D65"].sum(axis=0)

    d65 = colour.SDS_ILLUMINANTS["D65"]
    curves = invented()
    worst = 0
    with open(HERE / "ink_spectra_lab.csv", "w") as f:
        f.write(",".join(f"r{nm}" for nm in NM) + ",L,a,b\n")
        for r in curves:
            sd = colour.SpectralDistribution(dict(zip(NM.astype(float), r)))
            xyz = colour.sd_to_XYZ(sd, CMFS, d65, method="ASTM E308") / 100
            white = colour.sd_to_XYZ(colour.sd_constant(1), CMFS, d65, method="ASTM E308") / 100
            theirs = lab(xyz / white)
            worst = max(worst, colour.delta_E(theirs, lab(r @ w), method="CIE 2000"))
            f.write(",".join(f"{v:.4f}" for v in r) + "," + ",".join(f"{v:.6f}" for v in theirs) + "\n")
    print("weights against colour-science's ASTM E308, worst dE00", worst)

    colours = [(50, 0, 0), (92, -1, 4), (20, 1, -3), (45, 60, 35), (80, 5, 80), (30, 25, -55), (55, -50, 25),
               (60, -25, -30), (35, 35, -30), (65, 35, 60), (40, 10, 20), (8, 0.5, 0)]
    d = np.diff(np.eye(31), axis=0)
    h = d.T @ d
    with open(HERE / "ink_smoothest.csv", "w") as f:
        f.write("L,a,b," + ",".join(f"r{nm}" for nm in NM) + "\n")
        for L, a, b in colours:
            fy = (L + 16) / 116
            fs = np.array([fy + a / 500, fy, fy - b / 200])
            target = np.where(fs > 6 / 29, fs**3, 3 * (6 / 29) ** 2 * (fs - 4 / 29))
            rho = lambda z: (np.tanh(z) + 1) / 2
            slope = lambda z: 0.5 / np.cosh(z) ** 2
            start = np.full(31, np.arctanh(2 * target[1] - 1))
            best = minimize(lambda z: z @ h @ z, start, jac=lambda z: 2 * h @ z, method="SLSQP",
                            constraints={"type": "eq", "fun": lambda z: 100 * (rho(z) @ w - target),
                                         "jac": lambda z: 100 * w.T * slope(z)},
                            options={"ftol": 1e-15, "maxiter": 2000})
            miss = np.abs(rho(best.x) @ w - target).max()
            assert miss < 1e-9, (L, a, b, miss, best.message)
            f.write(f"{L},{a},{b}," + ",".join(f"{v:.8f}" for v in rho(best.x)) + "\n")
            print((L, a, b), best.nit, miss, best.fun)
