// The fixed test picture: a striped field with a standing figure of capsules. Only + - * / sqrt and floor are used, so that
// ReferencePicture.cs makes the very same numbers.

// Capsules: x0, y0, x1, y1, radius (all over the picture's side), then R, G, B.
const LIMBS = [
  [0.50, 0.20, 0.50, 0.22, 0.055, 205, 160, 130],
  [0.48, 0.30, 0.49, 0.52, 0.065, 60, 90, 160],
  [0.47, 0.33, 0.40, 0.46, 0.024, 70, 100, 170],
  [0.40, 0.46, 0.45, 0.56, 0.020, 205, 160, 130],
  [0.51, 0.33, 0.58, 0.46, 0.024, 50, 80, 150],
  [0.58, 0.46, 0.60, 0.57, 0.020, 195, 150, 120],
  [0.47, 0.54, 0.45, 0.71, 0.036, 190, 185, 170],
  [0.45, 0.71, 0.45, 0.88, 0.028, 40, 35, 35],
  [0.51, 0.54, 0.54, 0.71, 0.036, 180, 175, 160],
  [0.54, 0.71, 0.55, 0.88, 0.028, 35, 30, 30],
  [0.45, 0.90, 0.40, 0.91, 0.020, 30, 25, 25],
  [0.55, 0.90, 0.60, 0.91, 0.020, 30, 25, 25],
];

/** Triangle wave of period 1 between 0 and 1. */
function wave(t) {
  const f = t - Math.floor(t);
  return f < 0.5 ? 2 * f : 2 - 2 * f;
}

/** RGB of pixel (x, y) of a square picture, whole numbers 0..255. */
export function pixel(x, y, side) {
  const u = (x + 0.5) / side;
  const v = (y + 0.5) / side;
  let rgb = [90 + 60 * wave(3 * u + v), 120 + 50 * wave(2 * v - u), 100 + 40 * wave(5 * u)];
  for (const [x0, y0, x1, y1, r, ...colour] of LIMBS) {
    const dx = x1 - x0;
    const dy = y1 - y0;
    const along = Math.min(1, Math.max(0, ((u - x0) * dx + (v - y0) * dy) / (dx * dx + dy * dy)));
    const ex = u - x0 - along * dx;
    const ey = v - y0 - along * dy;
    const d = Math.sqrt(ex * ex + ey * ey) / r;
    if (d < 1) rgb = colour.map((c) => c * (1 - 0.4 * d * d));
  }
  return rgb.map((c) => Math.floor(c));
}
