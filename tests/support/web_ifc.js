// Every product of an IFC file as web-ifc makes it: volume (m3) and bounds (m, X across, Y along, Z up).
const {IfcAPI} = require('web-ifc');
const at = (m, x, y, z) => [0, 1, 2].map(k => m[k] * x + m[4 + k] * y + m[8 + k] * z + m[12 + k]);

async function main(path) {
  const api = new IfcAPI();
  await api.Init();
  const model = api.OpenModel(new Uint8Array(require('fs').readFileSync(path)), {CIRCLE_SEGMENTS: 48});
  const found = [];
  api.StreamAllMeshes(model, mesh => {
    const element = api.GetLine(model, mesh.expressID);
    let volume = 0, low = [1e9, 1e9, 1e9], high = [-1e9, -1e9, -1e9];
    for (let k = 0; k < mesh.geometries.size(); k++) {
      const placed = mesh.geometries.get(k), body = api.GetGeometry(model, placed.geometryExpressID);
      const values = api.GetVertexArray(body.GetVertexData(), body.GetVertexDataSize());
      const faces = api.GetIndexArray(body.GetIndexData(), body.GetIndexDataSize());
      const points = [];
      for (let i = 0; i < values.length; i += 6) {
        const [x, y, z] = at(placed.flatTransformation, values[i], values[i + 1], values[i + 2]);
        points.push([x, -z, y]);
      }
      for (const p of points)
        for (let a = 0; a < 3; a++) { low[a] = Math.min(low[a], p[a]); high[a] = Math.max(high[a], p[a]); }
      for (let i = 0; i < faces.length; i += 3) {
        const [a, b, c] = [0, 1, 2].map(k => points[faces[i + k]].map((value, j) => value - points[0][j]));
        volume += (a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0])
          + a[2] * (b[0] * c[1] - b[1] * c[0])) / 6;
      }
    }
    found.push({name: element.Name.value, mark: element.Tag.value, volume, low, high});
  });
  console.log(JSON.stringify(found));
}
main(process.argv[2]);
