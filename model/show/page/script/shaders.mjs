/** What the graphics run. Colours stay true: what the sun falls on is drawn in the colour it has. */

const COMMON = `#version 300 es
precision highp float;
precision highp int;
`;

/** Pieces: points of one merged mesh, or of small bodies that stand in rows. What a piece looks like is
 * one texel: its colour, and behind it bits: 1 shown, 2 lit, 4 clear, 8 outside: its lines stand a little nearer. */
export const PIECES = `${COMMON}
layout(location = 0) in vec3 point;
layout(location = 1) in float owner;
layout(location = 2) in vec4 first;
layout(location = 3) in vec4 second;
layout(location = 4) in vec4 third;
uniform highp sampler2D looks;
uniform mat4 shown;
uniform int pass; // 0 what is solid, 1 what is clear, 2 all that throws a shadow
uniform vec2 width; // of the looks
uniform float ahead; // how much nearer lines stand than they are, so that they lie on their surfaces
out vec3 spot;
flat out vec3 colour;
flat out int bits;
void main() {
  vec4 p = vec4(point, 1.0);
  spot = vec3(dot(first, p), dot(second, p), dot(third, p));
  int number = int(owner + 0.5);
  vec4 look = texelFetch(looks, ivec2(number % int(width.x), number / int(width.x)), 0);
  colour = look.rgb;
  bits = int(look.a * 255.0 + 0.5);
  bool clear = (bits & 4) != 0;
  bool wanted = (bits & 1) != 0 && (pass == 2 || clear == (pass == 1));
  gl_Position = wanted ? shown * vec4(spot, 1.0) : vec4(2.0, 2.0, 2.0, 1.0);
  if ((bits & 8) != 0) gl_Position.z -= ahead; // not of girts: they lie right behind their sheets
}`;

const LIGHT = `
uniform highp sampler2DShadow shade;
uniform mat4 sunward;
uniform vec3 sun;
uniform int shadows; // how many looks a point takes at the sun, 0 for none
float sunlight(vec3 at, vec3 n) {
  float d = dot(n, sun);
  if (d <= 0.0) return 0.0;
  float sunny = min(1.0, d * 3.0);
  if (shadows == 0) return sunny;
  vec3 q = (sunward * vec4(at + n * 45.0, 1.0)).xyz * 0.5 + 0.5;
  if (any(lessThan(q, vec3(0.0))) || any(greaterThan(q, vec3(1.0)))) return sunny;
  q.z -= 0.0004;
  if (shadows == 1) return sunny * texture(shade, q);
  float texel = 1.0 / float(textureSize(shade, 0).x);
  float sum = 0.0;
  for (int i = 0; i < 4; i++) {
    sum += texture(shade, q + vec3(float(i % 2) - 0.5, float(i / 2) - 0.5, 0.0) * 2.0 * texel);
  }
  return sunny * sum * 0.25;
}
uniform highp sampler2D over; // what stands, seen from straight above
uniform vec4 plan; // its middle and half widths
uniform vec2 heights; // the highest that is seen and the lowest
uniform int corners; // whether the sky that is shut out is told
float open(vec3 at, vec3 n) { // the share of the sky that is not: under eaves, in corners, on the ground beside a wall
  if (corners == 0 || any(greaterThan(abs(at.xy - plan.xy), plan.zw))) return 1.0;
  bool level = n.z > 0.3;
  float shut = 0.0;
  for (int i = 0; i < 8; i++) {
    float turn = 0.785 * float(i) + 0.4;
    vec2 aside = (i % 2 == 0 ? 110.0 : 380.0) * (level ? 2.0 : 1.0) * vec2(cos(turn), sin(turn));
    if (!level && dot(aside, n.xy) < 0.0) continue; // behind a wall
    vec2 place = at.xy + 20.0 * n.xy + aside;
    float stands = mix(heights.x, heights.y, texture(over, (place - plan.xy) / plan.zw * 0.5 + 0.5).r);
    float lift = stands - at.z + (level ? dot(n.xy, aside) / n.z : 0.0);
    shut += smoothstep(30.0, 150.0, lift) * clamp(1.0 - lift / (level ? 9000.0 : 1600.0), 0.0, 1.0);
  }
  return 1.0 - 0.045 * shut;
}
vec3 shaded(vec3 c, vec3 n, float light, float open) { // a little less where the sun comes aslant, so that walls read apart
  float sky = (0.62 + 0.1 * n.z) * open;
  return c * mix(sky, 0.94 + 0.06 * clamp(2.5 * dot(n, sun) - 0.6, 0.0, 1.0), light);
}
`;

const PAINT = (/** @type {string} */ cutting) => `${COMMON}
in vec3 spot;
flat in vec3 colour;
flat in int bits;
uniform vec4 cut;
uniform int pass;
uniform float line; // 0 for surfaces, else how strong a line is
uniform vec3 accent;
${LIGHT}
out vec4 paint;
void main() {
  vec3 n = normalize(cross(dFdx(spot), dFdy(spot)));
  bool chosen = (bits & 2) != 0;
  vec3 base = chosen ? mix(colour, accent, 0.8) : colour;
  ${cutting}
  if (line > 0.0) {
    float bright = dot(base, vec3(0.3, 0.6, 0.1));
    vec3 ink = bright < 0.18 ? base + 0.22 : base * 0.42;
    paint = vec4(ink, (pass == 1 && !chosen ? 0.5 : 1.0) * line);
    return;
  }
  paint = vec4(shaded(base, n, sunlight(spot, n), open(spot, n)), pass == 1 && !chosen ? 0.2 : 1.0);
}`;

/** Nothing is cut: what is behind something else is then never painted at all. */
export const WHOLE = PAINT("");

/** What is past the cut is left out, and what is hollow behind it is painted flat: bodies look full. */
export const CUT = PAINT(`
  if (dot(cut, vec4(spot, 1.0)) > 0.0) discard;
  if (line == 0.0 && !gl_FrontFacing) {
    paint = vec4(mix(base, vec3(0.1, 0.12, 0.15), 0.55), 1.0);
    return;
  }`);

/** The ground and a person: plain bodies of one colour each. */
export const PLAIN = `${COMMON}
layout(location = 0) in vec3 point;
uniform mat4 shown;
out vec3 spot;
void main() {
  spot = point;
  gl_Position = shown * vec4(point, 1.0);
}`;

export const GROUND = `${COMMON}
in vec3 spot;
uniform vec3 tone;
uniform vec3 haze;
uniform vec3 centre;
uniform float reach;
uniform int flat_; // the ground fades into the distance, a person does not
${LIGHT}
out vec4 paint;
void main() {
  vec3 n = flat_ == 1 ? vec3(0.0, 0.0, 1.0) : normalize(cross(dFdx(spot), dFdy(spot)));
  float sky = open(spot, n);
  vec3 c = shaded(tone, n, sunlight(spot, n), sky) * (flat_ == 1 ? sky : 1.0); // where it touches the ground, in the sun too
  float away = flat_ == 1 ? smoothstep(1.5 * reach, 12.0 * reach, distance(spot.xy, centre.xy)) : 0.0;
  paint = vec4(mix(c, haze, away), 1.0);
}`;

export const SKY = `${COMMON}
out vec2 place;
void main() {
  place = vec2(float(gl_VertexID % 2) * 4.0 - 1.0, float(gl_VertexID / 2) * 4.0 - 1.0);
  gl_Position = vec4(place, 1.0, 1.0);
}`;

export const AIR = `${COMMON}
in vec2 place;
uniform vec3 haze;
uniform vec3 high;
uniform float horizon;
uniform float steep;
out vec4 paint;
void main() {
  float up = clamp((place.y - horizon) * steep, 0.0, 1.0);
  paint = vec4(mix(haze, high, sqrt(up)), 1.0);
}`;

export const DARKNESS = `${COMMON}
in vec3 spot;
flat in int bits;
uniform vec4 cut;
void main() { if (dot(cut, vec4(spot, 1.0)) > 0.0) discard; }`;

/** Laps: strips in the colours of which sheet is on top. */
export const STRIPS = `${COMMON}
layout(location = 0) in vec3 point;
layout(location = 1) in vec3 tone;
uniform mat4 shown;
out vec3 spot;
out vec3 colour;
void main() {
  spot = point;
  colour = tone;
  gl_Position = shown * vec4(point, 1.0);
}`;

export const STRIP = `${COMMON}
in vec3 spot;
in vec3 colour;
uniform vec4 cut;
out vec4 paint;
void main() {
  if (dot(cut, vec4(spot, 1.0)) > 0.0) discard;
  paint = vec4(colour, 1.0);
}`;

export const NOTHING = `${COMMON}
void main() {}`;
