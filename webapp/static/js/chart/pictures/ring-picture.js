// The rope closed to a ring, drawn with WebGL2: one call, a square a bead. As instances the squares
// would be drawn one by one where there is no graphics card, so all their corners are vertices. No page in here.

import { linear, rgb } from "./colour.js";
import { FINISH } from "./finishes.js";
import { SHAPE } from "./rope-tile.js";
import { lookAt, wholeTurns } from "./ring-place.js";
import { FRAGMENT, VERTEX } from "./ring-shaders.js";

const UNIFORMS = ["view", "project", "eye", "semi", "total", "turns", "turn", "sense", "rope", "ring", "palette", "finish", "depth"];
const CORNERS = 4, TRIANGLES = [0, 1, 2, 2, 1, 3];      // of a square

export class RingPicture {
  /** Raises where WebGL2 is missing. */
  constructor(canvas) {
    const gl = canvas.getContext("webgl2", { antialias: true, alpha: true, premultipliedAlpha: true });
    if (!gl) throw new Error("WebGL2 is missing");
    this.gl = gl;
    this.program = linked(gl);
    this.at = Object.fromEntries(UNIFORMS.map(name => [name, gl.getUniformLocation(this.program, name)]));
    this.vertices = gl.createVertexArray();
    gl.bindVertexArray(this.vertices);
    this.colours = gl.createBuffer();
    gl.bindBuffer(gl.ARRAY_BUFFER, this.colours);
    gl.enableVertexAttribArray(0);
    gl.vertexAttribIPointer(0, 1, gl.UNSIGNED_BYTE, 1, 0);
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, gl.createBuffer());
  }

  /** The beads of the whole ring as palette indices, and DIM with those that are to be faded. */
  load({ around, hand, palette }, beads) {
    const { gl } = this, lights = new Float32Array(192), forms = new Float32Array(256), depths = new Float32Array(128);
    palette.forEach(({ colour, finish }, i) => {
      const { body, shine, glow, metal, lining, play } = FINISH[finish];
      lights.set(rgb(colour).map(linear), i * 3);
      forms.set([body, shine, glow, metal], i * 4);
      depths.set([lining, play], i * 2);
    });
    gl.bindVertexArray(this.vertices);
    gl.bindBuffer(gl.ARRAY_BUFFER, this.colours);
    gl.bufferData(gl.ARRAY_BUFFER, Uint8Array.from({ length: CORNERS * beads.length }, (_, i) => beads[Math.floor(i / CORNERS)]), gl.DYNAMIC_DRAW);
    gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, triangles(beads.length), gl.DYNAMIC_DRAW);
    gl.useProgram(this.program);
    gl.uniform3fv(this.at.palette, lights);
    gl.uniform4fv(this.at.finish, forms);
    gl.uniform2fv(this.at.depth, depths);
    const rope = SHAPE.around / (2 * Math.sin(Math.PI / (around + 0.5))), ring = beads.length / (around + 0.5) / (2 * Math.PI);
    this.shape = { around, hand, total: beads.length, rope, ring };
  }

  draw({ yaw, tilt, turn, zoom }) {
    const { gl, at, shape: { around, hand, total, rope, ring } } = this, { width, height } = gl.canvas;
    const { view, project, eye } = lookAt(ring + 2.2 * rope, width, height, yaw, tilt, zoom);
    gl.viewport(0, 0, width, height);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.enable(gl.DEPTH_TEST);
    gl.useProgram(this.program);
    gl.bindVertexArray(this.vertices);
    gl.uniformMatrix4fv(at.view, false, view);
    gl.uniformMatrix4fv(at.project, false, project);
    gl.uniform3fv(at.eye, eye);
    gl.uniform1ui(at.total, total);
    gl.uniform1ui(at.turns, wholeTurns(around, total));
    gl.uniform1f(at.turn, turn);
    gl.uniform1f(at.sense, hand === "left" ? 1 : -1);
    gl.uniform1f(at.rope, rope);
    gl.uniform1f(at.ring, ring);
    gl.uniform3f(at.semi, (SHAPE.around * SHAPE.fill) / 2 * 1.06, SHAPE.across / 2, SHAPE.across / 2);
    gl.drawElements(gl.TRIANGLES, TRIANGLES.length * total, gl.UNSIGNED_INT, 0);
  }
}

/** The vertices of two triangles for each of so many squares. */
function triangles(squares) {
  const all = new Uint32Array(TRIANGLES.length * squares);
  for (let i = 0; i < squares; i++) all.set(TRIANGLES.map(corner => CORNERS * i + corner), TRIANGLES.length * i);
  return all;
}

function linked(gl) {
  const program = gl.createProgram();
  for (const [kind, text] of [[gl.VERTEX_SHADER, VERTEX], [gl.FRAGMENT_SHADER, FRAGMENT]]) {
    const shader = gl.createShader(kind);
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
  }
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(program) || "the ring's program cannot be linked");
  return program;
}
