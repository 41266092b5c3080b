// The two programs that draw the ring: a square a bead, its rounded surface found for every pixel. No page in here.

export const VERTEX = `#version 300 es
precision highp float; precision highp int;
layout(location=0) in uint colour;
uniform mat4 view, project; uniform vec3 eye, semi; uniform uint total, turns; uniform float turn, sense, rope, ring;
uniform vec3 palette[64]; uniform vec4 finish[64]; uniform vec2 depth[64];
flat out vec3 C, T, R, X, own; flat out vec4 form; flat out vec2 inner; flat out float faded; out vec3 P;
void main() {
  uint k = uint(gl_VertexID) / 4u; vec2 corner = vec2(gl_VertexID & 1, (gl_VertexID >> 1) & 1) * 2.0 - 1.0;
  float th = sense * 6.283185307 * float((k * turns) % total) / float(total) + turn, at = 6.283185307 * float(k) / float(total);
  vec3 O = vec3(cos(at), sin(at), 0.0), A = vec3(-O.y, O.x, 0.0), Z = vec3(0, 0, 1);
  vec3 out_ = O * cos(th) + Z * sin(th), c = O * ring + out_ * rope;
  if (dot(out_, normalize(eye - c)) < -0.30) { gl_Position = vec4(2.0, 2.0, 2.0, 1.0); return; }
  C = (view * vec4(c, 1.0)).xyz; R = mat3(view) * out_; T = mat3(view) * (Z * cos(th) - O * sin(th)); X = mat3(view) * A;
  uint entry = colour & 63u;
  own = palette[entry]; form = finish[entry]; inner = depth[entry]; faded = colour > 63u ? .66 : 0.;
  vec3 sx = vec3(T.x, R.x, X.x) * semi, sy = vec3(T.y, R.y, X.y) * semi;      // half extents of the bead on the screen
  P = C + vec3(corner * vec2(length(sx), length(sy)) * 1.04, 0.0);
  gl_Position = project * vec4(P, 1.0);
}`;

export const FRAGMENT = `#version 300 es
precision highp float;
flat in vec3 C, T, R, X, own; flat in vec4 form; flat in vec2 inner; flat in float faded; in vec3 P;
uniform vec3 semi; uniform mat4 project; uniform float rope;
out vec4 pixel;
void main() {
  vec3 q = vec3(dot(-C, T), dot(-C, R), dot(-C, X)) / semi, g = vec3(dot(P, T), dot(P, R), dot(P, X)) / semi;
  float a = dot(g, g), b = dot(q, g), c = dot(q, q) - 1.0, root = b * b - a * c;
  if (root < 0.0) discard;
  float s = (-b - sqrt(root)) / a;
  vec3 l = (q + s * g) * semi, nl = l / semi, n = normalize(T * nl.x + R * nl.y + X * nl.z), p = P * s, v = normalize(-p);
  vec4 clip = project * vec4(p, 1.0);
  gl_FragDepth = .5 + .5 * clip.z / clip.w;
  float open = smoothstep(rope - .75 * semi.y, rope + .82 * semi.y, length(vec2(rope + l.y, l.x)));
  vec3 K = normalize(vec3(-.38, .72, .80)), F = normalize(vec3(.55, -.55, .55)), H = normalize(K + v);
  float key = clamp((dot(n, K) + .22) / 1.22, 0., 1.), fill = clamp(dot(n, F), 0., 1.), sky = .5 + .5 * n.y;
  float lit = (.20 + .16 * sky + .78 * key + .12 * fill) * (.26 + .74 * open);
  vec3 r = reflect(-v, n);
  float pane = smoothstep(.16, .30, r.y) * smoothstep(.98, .84, r.y) * smoothstep(.62, .46, abs(r.x + .30)) * step(0., r.z);
  float nh = max(0., dot(n, H)), away = 1. - max(0., dot(n, v));
  float shine = (pow(nh, 90.) * .75 + pane * .42 + pow(nh, 14.) * .10 + pow(away, 4.) * .10) * open * form.y;
  float through = pow(clamp(-dot(n.xy, K.xy) * .9 + .25 * n.z, 0., 1.), 1.6) * open * form.z;
  vec2 toEye = normalize(vec2(dot(v, R), dot(v, X)) + 1e-5);
  float hole = smoothstep(.62, .34, length(nl.yz - dot(nl.yz, toEye) * toEye));
  vec3 body = mix(own, mix(vec3(.68, .71, .73), own, .2 + .75 * hole), inner.x);
  body = mix(body, vec3(.67, .55, .80), inner.y * .5 * smoothstep(.05, .75, away));
  vec3 col = body * lit * form.x * 1.22 + own * through * .8;
  col = mix(col, mix(vec3(1.), min(vec3(1.), own * 1.4 + .12), form.w), clamp(shine, 0., 1.));
  col = mix(col, vec3(.80, .75, .65), faded);
  pixel = vec4(mix(12.92 * col, 1.055 * pow(max(col, 0.), vec3(1. / 2.4)) - .055, step(.0031308, col)), 1.);
}`;
