// The rope as spheres of diameter 1 on a helix: radius, twist and rise per bead. No page in here.
//
// Centres stand at (R cos kθ, R sin kθ, kh); each touches k ± 1, k ± N and k ± (N + 1). Given θ the equations for 1 and N
// are linear in R² and h²; the one for N + 1 finds θ by halving the stretch between 2π/(N + 1) and 2π/N.

const known = new Map();

export function helix(around) {
  if (!known.has(around)) known.set(around, solve(around));
  return known.get(around);
}

function solve(around) {
  let low = (2 * Math.PI) / (around + 1), high = (2 * Math.PI) / around;
  for (let halvings = 0; halvings < 80; halvings++) {
    const middle = (low + high) / 2;
    if (gap(around, middle) < 0) low = middle; else high = middle;
  }
  const { radius2, rise2 } = squares(around, low);
  return { radius: Math.sqrt(radius2), twist: low, rise: Math.sqrt(rise2) };
}

function squares(around, twist) {
  const one = 2 * (1 - Math.cos(twist)), below = 2 * (1 - Math.cos(around * twist)), scale = one * around ** 2 - below;
  return { radius2: (around ** 2 - 1) / scale, rise2: (one - below) / scale };
}

function gap(around, twist) {
  const { radius2, rise2 } = squares(around, twist), far = around + 1;
  return 2 * radius2 * (1 - Math.cos(far * twist)) + far ** 2 * rise2 - 1;
}
