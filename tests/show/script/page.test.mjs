/** The modules of the page's script, each by itself: node --test. */

import assert from "node:assert/strict";
import { test } from "node:test";
import { behind } from "../../../model/show/page/script/behind.mjs";
import { between, moved, named, nearer, place, ray, toward, turned, VIEWS } from "../../../model/show/page/script/camera.mjs";
import { lines, rgb } from "../../../model/show/page/script/colours.mjs";
import { numbers, stand, unstand } from "../../../model/show/page/script/data.mjs";
import { length } from "../../../model/show/page/script/figures.mjs";
import { meets } from "../../../model/show/page/script/labels.mjs";
import { ahead, matrix, near } from "../../../model/show/page/script/lens.mjs";
import { amount, order } from "../../../model/show/page/script/lists.mjs";
import { boxes, creases, merged } from "../../../model/show/page/script/mesh.mjs";
import { Pace } from "../../../model/show/page/script/pace.mjs";
import { crosses, hit } from "../../../model/show/page/script/pick.mjs";
import { room } from "../../../model/show/page/script/room.mjs";
import { repeated, runs } from "../../../model/show/page/script/rows.mjs";
import { apart, dot, seen, uncut, unit } from "../../../model/show/page/script/vector.mjs";

const CUBE = {
  points: new Float32Array([0, 0, 0, 100, 0, 0, 100, 100, 0, 0, 100, 0, 0, 0, 100, 100, 0, 100, 100, 100, 100, 0, 100, 100]),
  faces: new Uint32Array([0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7]),
};
const PLACE = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
const TURNED = { origin: [500, 20, -3], x: [0, 1, 0], y: [-1, 0, 0], z: [0, 0, 1] };
const piece = (number, more) => ({ number, name: `p${number}`, role: "column", group: 0, mesh: 0, row: [[0, 0, 0]], opening: "", place: PLACE, ...more });
const all = (pieces) => ({ meshes: [CUBE], pieces, groups: [], skin: [] });
const BOX = [[-1000, -2000, 0], [3000, 6000, 2500]];
const STOOD = { framed: BOX, level: 0, reach: 9300 };

test("lengths are those of the lists", () => {
  const said = [[0, '0"'], [25.4, '1"'], [304.8, "1'"], [2806.7, '9\' 2-1/2"'], [1.5875, '1/16"'], [317.5, '1\' 0-1/2"'], [3047.9, "10'"]];
  for (const [mm, text] of said) assert.equal(length(mm, "ft-in"), text);
  assert.equal(length(2499.6, "mm"), "2500 mm");
});

test("figures sort as what they are", () => {
  const rising = ['1/16"', '1"', '1-1/2"', "1'", '9\' 2-1/2"', "10'", '10\' 11-5/8"'];
  assert.deepEqual([...rising].reverse().sort(order), rising);
  assert.deepEqual(["R10", "R2", "R1"].sort(order), ["R1", "R2", "R10"]);
  assert.equal(amount("12.5"), 12.5);
  assert.ok(Number.isNaN(amount("slategray")) && Number.isNaN(amount("")));
});

test("numbers are the sums of their differences", () => {
  const ints = [0, 100, 0, 50, 0, 0, 0, 0, 100, 0, 1, 1, 7, 0, 0, 10, 10, 5, 0, 1, 1];
  const buffer = new ArrayBuffer(4 * ints.length + 36);
  new Int32Array(buffer, 0, ints.length).set(ints);
  new Float32Array(buffer, 4 * ints.length).set([7, 8, 9, 1, 0, 0, 0, 1, 0]);
  const found = numbers(buffer, { meshes: [[3, 1], [1, 0]], rows: [2] }, 1);
  assert.deepEqual([...found.meshes[0].points], [0, 0.5, 0, 1, 0.5, 0, 1, 0.5, 1]);
  assert.deepEqual([...found.meshes[0].faces], [0, 1, 2]);
  assert.deepEqual([...found.meshes[1].points].map((value) => value.toFixed(2)), ["0.07", "0.00", "0.00"]);
  assert.deepEqual(found.rows[0], [[0.1, 0.05, 0.01], [0.2, 0.05, 0.02]]);
  assert.deepEqual(found.places[0], { origin: [7, 8, 9], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] });
});

test("a point stands in the building and comes back", () => {
  assert.deepEqual(stand(TURNED, [10, 0, 5]), [500, 30, 2]);
  assert.deepEqual(unstand(TURNED, [500, 30, 2]), [10, 0, 5]);
});

test("a cube has twelve edges and no bend, and stands once", () => {
  const { sharp, blunt } = creases(CUBE);
  assert.deepEqual([sharp.length, blunt.length], [24, 0]);
  const whole = merged(all([piece(0), piece(1, { place: TURNED })]));
  assert.equal(whole.faces.length, 72);
  assert.equal(whole.broad, 72);
  assert.equal(whole.sharp.length, 48);
  assert.deepEqual([...whole.points.subarray(24, 27)], [500, 20, -3]);
  assert.deepEqual([...whole.owners], [...Array(8).fill(0), ...Array(8).fill(1)]);
});

test("panes come after all else, so that one sees through them", () => {
  const whole = merged(all([piece(0, { role: "pane" }), piece(1)]));
  assert.deepEqual(whole.layers, [0, 0, 36, 72]);
  assert.equal(whole.owners[0], 1);
  assert.equal(whole.rims, 72);
});

test("rows stand where their points are", () => {
  const rows = repeated(all([piece(0, { place: TURNED, row: [[0, 0, 0], [10, 0, 0]] }), piece(1)]));
  assert.equal(rows.length, 1);
  assert.deepEqual([3, 7, 11].map((k) => rows[0].places[12 + k]), [500, 30, -3]);
  assert.deepEqual([...rows[0].owners], [0, 0]);
});

test("of a long row is drawn what is in view and near, or lit", () => {
  const row = Array.from({ length: 13 }, (_, k) => [0, 2500 * (12 - k), 0]);
  const [long] = repeated(all([piece(7, { row })]));
  assert.deepEqual(long.slices.map(({ first, count }) => [first, count]), [[0, 2], [2, 2], [4, 2], [6, 2], [8, 2], [10, 2], [12, 1]]);
  assert.ok(long.heads > 0 && long.heads === long.faces.length);
  const stood = { framed: [[0, 0, 0], [100, 30_100, 100]], level: 0, reach: 30_000 };
  const eye = { target: [0, 0, 0], turn: 0.1, rise: 0.1, away: 2000, parallel: false, wide: false };
  const seen = (lit, to = {}) => runs({ ...long, size: 90, heads: 60, lit }, matrix({ ...eye, ...to }, 1.5, stood), { ...eye, ...to }, 600);
  assert.deepEqual(seen(false), [{ first: 0, count: 4, size: 90 }]); // to 12 mm a pixel
  assert.deepEqual(seen(true), [{ first: 0, count: 4, size: 90 }, { first: 4, count: 9, size: 60 }]);
  assert.deepEqual(seen(true, { turn: 0.1 + Math.PI, target: [0, -9000, 0] }), []); // behind the eye
  assert.deepEqual(seen(false, { parallel: true, turn: 0, rise: 0 }), [{ first: 0, count: 8, size: 90 }, { first: 8, count: 5, size: 60 }]);
});

test("a ray meets the nearest piece that is wanted and not cut away", () => {
  const two = all([piece(0), piece(1, { place: { ...PLACE, origin: [0, 500, 0] } })]);
  const from = { from: [30, -1000, 40], way: [0, 1, 0] };
  const pick = (wanted, cut) => hit(two, boxes(two), from, wanted, cut);
  const first = pick(() => true, [0, 0, 0, 0]);
  assert.deepEqual([first.piece, first.away, first.at, first.corner], [0, 1000, [30, 0, 40], [0, 0, 0]]);
  assert.equal(pick((k) => k === 1, [0, 0, 0, 0]).away, 1500);
  assert.equal(pick(() => true, [0, -1, 0, 50]).away, 1100); // through the cut face, to its back
  assert.equal(pick(() => true, [0, -1, 0, 200]).piece, 1);
  assert.equal(pick(() => false, [0, 0, 0, 0]), null);
  assert.equal(crosses([[0, 0, 0], [1, 1, 1]], [5, 5, -1], [0, 0, 1], Infinity), false);
});

for (const level of [false, true]) {
  test(`a place behind something is told${level ? " in parallel" : ""}`, () => {
    const two = all([piece(0), piece(1, { place: { ...PLACE, origin: [0, 900, 0] } })]);
    const eye = { ...named("front", BOX, 0, 1.2, level), target: [50, 50, 50], rise: 0 };
    const far = (/** @type {(k: number) => boolean} */ hides, cut = [0, 0, 0, 0]) => behind(two, boxes(two), eye, hides, cut);
    const at = [50, 950, 50];
    assert.equal(far(() => true)(at), true);
    assert.equal(far((k) => k === 1)(at), false); // within what it is said of
    assert.equal(far(() => true, [0, -1, 0, 500])(at), false); // the first is cut away
    assert.equal(far(() => true)([50, 0, 50]), false);
    const asked = far(() => true);
    for (let k = 0; k < 60; k++) asked(at);
    assert.equal(asked(at), false);
  });
}

for (const level of [false, true]) {
  for (const name of VIEWS.filter((one) => one !== "inside")) {
    test(`the whole building is in the view ${name}${level ? " in parallel" : ""}`, () => {
      const eye = named(name, BOX, 0, 1.5, level);
      const shown = matrix(eye, 1.5, STOOD);
      for (let corner = 0; corner < 8; corner++) {
        const spot = seen(shown, [0, 1, 2].map((k) => BOX[(corner >> k) & 1][k]));
        assert.ok(spot && spot.every((value) => Math.abs(value) <= 1), `${spot}`);
      }
    });
  }
}

test("depths begin before all that is seen, and no sooner than they need", () => {
  for (const name of VIEWS.filter((one) => one !== "inside")) {
    for (const factor of [1, 0.5, 3]) {
      const eye = nearer(named(name, BOX, 0, 1.2, false), factor);
      const begin = near(eye, 1.2, STOOD);
      const depth = (/** @type {number[]} */ p) => -dot(p.map((value, k) => value - place(eye)[k]), toward(eye));
      for (let corner = 0; corner < 8; corner++) {
        const p = [0, 1, 2].map((k) => BOX[(corner >> k) & 1][k]);
        if (factor >= 1) assert.ok(begin < depth(p), `${name} ${factor} ${begin} ${depth(p)}`);
      }
      for (const [x, y] of [[-1, -1], [0, -1], [1, -1], [0.5, 0.1]]) {
        const { from, way } = ray(eye, 1.2, x, y);
        if (way[2] < 0) assert.ok(begin < depth(from.map((value, k) => value - (from[2] / way[2]) * way[k])), name);
      }
      if (factor === 1) assert.ok(begin > 2000, `${name} ${begin}`);
    }
  }
  const among = { ...named("inside", BOX, 0, 1.2, false), away: 4000 };
  assert.equal(near(among, 1.2, STOOD), 200);
});

test("inside is in the building, not in what leans to it", () => {
  const pieces = [piece(0, { name: "column 1" }), piece(1, { name: "left lean-to column 1", place: { ...PLACE, origin: [-900, 0, 0] } })];
  const found = room(all(pieces));
  assert.deepEqual([found.hall[0][0], found.box[0][0]], [0, -900]);
  assert.deepEqual(room(all([pieces[1]])).hall, room(all([pieces[1]])).box);
});

test("the opening view is at the height of an eye", () => {
  const eye = named("corner", BOX, -100, 1.5, false);
  assert.ok(Math.abs(place(eye)[2] - 1550) < 30);
  assert.ok(place(eye)[0] < BOX[0][0] && place(eye)[1] < BOX[0][1]);
});

for (const level of [false, true]) {
  test(`a ray goes to where its spot is drawn${level ? " in parallel" : ""}`, () => {
    const eye = named("corner", BOX, 0, 1.2, level);
    for (const [x, y] of [[0, 0], [0.5, -0.3], [-0.9, 0.8]]) {
      const { from, way } = ray(eye, 1.2, x, y);
      const spot = seen(matrix(eye, 1.2, STOOD), from.map((value, k) => value + 9000 * way[k]));
      assert.ok(Math.hypot(spot[0] - x, spot[1] - y) < 1e-4);
    }
  });
}

test("the eye turns, moves, nears, and stays above the ground", () => {
  const eye = named("corner", BOX, 0, 1.2, false);
  assert.ok(apart(place(turned(eye, 0.5, 0, 0)), place(eye)) > 1000);
  assert.ok(place(turned(eye, 0, -3, 0))[2] > 200);
  assert.equal(turned(eye, 0, 9, 0).rise, Math.PI / 2);
  assert.ok(Math.abs(dot(unit(moved(eye, 1, 0).target.map((v, k) => v - eye.target[k])), [Math.cos(eye.turn), Math.sin(eye.turn), 0]) - 1) < 1e-9);
  assert.equal(nearer(eye, 0.5).away, eye.away / 2);
  assert.deepEqual(between(eye, named("top", BOX, 0, 1.2, false), 1).target, named("top", BOX, 0, 1.2, false).target);
  assert.ok(ahead(eye, 1.2, STOOD) > 0);
});

test("what was tried is said table by table, with what stays, and nothing of what was built", () => {
  const paints = [
    { part: "walls", name: "white", hex: "#ffffff", typed: "white", table: "sheets", key: "wall_colour" },
    { part: "roof", name: "rust (#7a2e2a)", hex: "#7a2e2a", typed: "#7a2e2a", table: "sheets", key: "roof_colour" },
    { part: "trims", name: "navy", hex: "#000080", typed: "navy", table: "", key: "" },
  ];
  assert.equal(lines(paints, ["#ffffff", "#7a2e2a", "#000080"]), "");
  const tried = lines(paints, ["#111111", "#7a2e2a", "#333333"]);
  assert.equal(tried, '[sheets]\nwall_colour = "#111111"\nroof_colour = "#7a2e2a"\n\n# trims, now navy: #333333');
  assert.deepEqual(rgb("#7a2e2a"), [122, 46, 42]);
});

test("words keep room between them, and a plane keeps one side", () => {
  assert.equal(meets([0, 0, 10, 10], [12, 0, 20, 10]), true);
  assert.equal(meets([0, 0, 10, 10], [30, 0, 40, 10]), false);
  assert.equal(uncut([1, 2, 3], [0, 0, 0, 0]), true);
  assert.equal(uncut([1, 2, 3], [1, 0, 0, -0.5]), false);
});

test("the first picture comes at once, and what is slow is answered coarsely", () => {
  const plain = (pace) => !pace.quality(false).shadows && !pace.quality(false).smooth;
  const fast = new Pace();
  assert.ok(plain(fast) && fast.unsure && !fast.slow);
  fast.took(400); // it waited for much else
  assert.ok(plain(fast) && fast.unsure && !fast.slow);
  fast.took(10);
  assert.deepEqual([fast.unsure, fast.quality(false).corners, fast.quality(false).shadows], [true, true, 4]);
  fast.took(60); // the shading of corners goes first
  assert.deepEqual([fast.unsure, fast.slow, fast.quality(false).corners, fast.quality(false).shadows], [false, false, false, 4]);
  assert.deepEqual(fast.quality(true), fast.quality(false));
  for (const times of [[400, 300], [10, 10, 300]]) {
    const slow = new Pace();
    for (const ms of times) slow.took(ms);
    assert.deepEqual([slow.unsure, slow.slow, slow.quality(false).corners, slow.quality(false).shadows], [false, true, false, 1]);
    assert.ok(slow.quality(false).smooth && !slow.quality(true).smooth && slow.quality(false).fresh && !slow.quality(true).fresh);
    assert.equal(slow.quality(true).scale, times.length === 2 ? 0.5 : 1);
  }
});
