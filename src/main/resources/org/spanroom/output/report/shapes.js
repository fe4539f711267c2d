/**
 * Places of the payload as pixels of the whole world at zoom 0, in which a map at any zoom is a shift and a factor away. Calculated once,
 * so that a redraw of many lines is quick.
 */
(function (S) {
  'use strict';

  const WORLD = 256;

  function toWorld(lonMicro, latMicro) {
    const latRad = (latMicro * 1e-6 * Math.PI) / 180;
    return [
      WORLD * ((lonMicro * 1e-6) / 360 + 0.5),
      WORLD * (0.5 - Math.log(Math.tan(Math.PI / 4 + latRad / 2)) / (2 * Math.PI)),
    ];
  }

  /** A line: x and y in turn, and the box around it; null for a row without one. */
  S.worldLine = (packed) => {
    if (!packed || packed.length < 2) {
      return null;
    }
    const at = new Float64Array(packed.length);
    const box = [Infinity, Infinity, -Infinity, -Infinity];
    let lon = 0;
    let lat = 0;
    for (let i = 0; i < packed.length; i += 2) {
      lon += packed[i];
      lat += packed[i + 1];
      const [x, y] = toWorld(lon, lat);
      at[i] = x;
      at[i + 1] = y;
      box[0] = Math.min(box[0], x);
      box[1] = Math.min(box[1], y);
      box[2] = Math.max(box[2], x);
      box[3] = Math.max(box[3], y);
    }
    return { at, box };
  };

  /** A point as x and y; null for a row without one. */
  S.worldPoint = (packed) => (packed ? toWorld(packed[0], packed[1]) : null);

  S.joinBoxes = (boxes) =>
    boxes
      .filter(Boolean)
      .reduce(
        (all, box) =>
          all
            ? [Math.min(all[0], box[0]), Math.min(all[1], box[1]), Math.max(all[2], box[2]), Math.max(all[3], box[3])]
            : box,
        null,
      );

  /** A corner of the world in degrees, for the map's own functions. */
  S.toLatLng = ([x, y]) => [
    ((2 * Math.atan(Math.exp(Math.PI * (1 - (2 * y) / WORLD))) - Math.PI / 2) * 180) / Math.PI,
    360 * (x / WORLD - 0.5),
  ];

  /**
   * A line moved to one side by a number of pixels, each corner along the middle of its two directions, so that lines of one bank stay
   * parallel around corners.
   *
   * @param {Float64Array} at pixels, x and y in turn
   */
  S.movedAside = (at, pixels) => {
    if (!pixels) {
      return at;
    }
    const moved = new Float64Array(at.length);
    const last = at.length - 2;
    for (let i = 0; i <= last; i += 2) {
      const before = i === 0 ? 0 : i - 2;
      const after = i === last ? last : i + 2;
      const dx = at[after] - at[before];
      const dy = at[after + 1] - at[before + 1];
      const size = Math.hypot(dx, dy) || 1;
      moved[i] = at[i] - (dy / size) * pixels;
      moved[i + 1] = at[i + 1] + (dx / size) * pixels;
    }
    return moved;
  };

  /** The square of the distance from a point to a line. */
  S.squareToLine = (at, x, y) => {
    let best = Infinity;
    for (let i = 0; i + 3 < at.length; i += 2) {
      const dx = at[i + 2] - at[i];
      const dy = at[i + 3] - at[i + 1];
      const square = dx * dx + dy * dy;
      const share = square ? Math.max(0, Math.min(1, ((x - at[i]) * dx + (y - at[i + 1]) * dy) / square)) : 0;
      const ex = at[i] + share * dx - x;
      const ey = at[i + 1] + share * dy - y;
      best = Math.min(best, ex * ex + ey * ey);
    }
    return best;
  };
})(window.Spanroom);
