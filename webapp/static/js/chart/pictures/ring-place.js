// Where a bead stands on the closed ring, and how one looks at it. No page in here.
//
// The ring lies flat, its axis upright. Outward vectors of consecutive beads turn so that for right-handed work
// (out of bead k × out of bead k + 1) · direction of work > 0; closing it rounds the turns to whole ones.

/** Whole turns of the spiral in a ring of that many beads. */
export const wholeTurns = (around, total) => Math.max(1, Math.round(total / (around + 0.5)));

/** Direction out of the rope, and direction of work, at bead k, for a rope turned by `turn` radians. */
export function ringPlace(around, hand, total, k, turn = 0) {
  const sense = hand === "left" ? 1 : -1,
    th = (sense * 2 * Math.PI * ((k * wholeTurns(around, total)) % total)) / total + turn,
    at = (2 * Math.PI * k) / total;
  const outward = [Math.cos(at), Math.sin(at), 0];
  return { out: [outward[0] * Math.cos(th), outward[1] * Math.cos(th), Math.sin(th)], along: [-outward[1], outward[0], 0] };
}

/** The view of a ring: matrices and eye for a canvas; `tilt` is how far the eye stands above the table, 0 to π/2. */
export function lookAt(radius, width, height, yaw, tilt, zoom) {
  const fov = 0.5, far = ((radius / Math.sin(fov / 2)) * Math.max(1, height / width) * 1.03) / zoom,
    scale = 1 / Math.tan(fov / 2);
  const near = Math.max(0.1, far - radius * 1.3), back = far + radius * 1.3, above = Math.PI / 2 - tilt;
  const cy = Math.cos(yaw), sy = Math.sin(yaw), ct = Math.cos(above), st = Math.sin(above);
  return {
    view: [cy, sy * ct, -sy * st, 0, -sy, cy * ct, -cy * st, 0, 0, st, ct, 0, 0, 0, -far, 1],
    project: [(scale * height) / width, 0, 0, 0, 0, scale, 0, 0, 0, 0, (back + near) / (near - back), -1, 0, 0, (2 * back * near) / (near - back), 0],
    eye: [-sy * st * far, -cy * st * far, ct * far],
  };
}
