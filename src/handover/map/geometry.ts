/** Bytes written one after the other, the low byte first. */
function written(
  fill: (put: {
    readonly byte: (n: number) => void;
    readonly int: (n: number) => void;
    readonly double: (n: number) => void;
  }) => void,
): Uint8Array {
  const parts: Uint8Array[] = [];
  const view = (bytes: number, set: (data: DataView) => void): void => {
    const data = new DataView(new ArrayBuffer(bytes));
    set(data);
    parts.push(new Uint8Array(data.buffer));
  };
  fill({
    byte: (n) => view(1, (data) => data.setUint8(0, n)),
    int: (n) => view(4, (data) => data.setInt32(0, n, true)),
    double: (n) => view(8, (data) => data.setFloat64(0, n, true)),
  });
  const whole = new Uint8Array(parts.reduce((sum, each) => sum + each.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

type Xyz = readonly [x: number, y: number, z: number];

const POINT_Z = 1001;
const LINE_Z = 1002;

/** A point with its height as GeoPackage stores it. Source: OGC 12-128r17, clause 2.1.3: a head, then well-known binary. */
export function pointBlob(srsId: number, [x, y, z]: Xyz): Uint8Array {
  return written(({ byte, int, double }) => {
    head(byte, int, srsId, 0);
    byte(1);
    int(POINT_Z);
    for (const each of [x, y, z]) double(each);
  });
}

/** A line with heights; its head says how far it reaches east and north. */
export function lineBlob(srsId: number, points: readonly Xyz[]): Uint8Array {
  const reach = (axis: 0 | 1): readonly [number, number] => {
    const values = points.map((point) => point[axis]);
    return [Math.min(...values), Math.max(...values)];
  };
  return written(({ byte, int, double }) => {
    head(byte, int, srsId, 1);
    for (const each of [...reach(0), ...reach(1)]) double(each);
    byte(1);
    int(LINE_Z);
    int(points.length);
    for (const each of points.flat()) double(each);
  });
}

/** `GP`, version 0, flags: the low byte first, and which envelope follows (0 none, 1 east and north). */
function head(byte: (n: number) => void, int: (n: number) => void, srsId: number, envelope: 0 | 1): void {
  for (const each of [0x47, 0x50, 0, envelope * 2 + 1]) byte(each);
  int(srsId);
}
