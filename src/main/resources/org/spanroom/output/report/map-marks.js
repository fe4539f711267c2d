/** What is on the map beside the spans: streets and zones below them; corridors, vaults, findings, field checks and years above. */
(function (S) {
  'use strict';

  const NAMES_FROM_ZOOM = 15.5;
  const VAULTS_FROM_ZOOM = 15;

  /** Writes a name where no other is. */
  function placeName(view, taken, text, x, y, angle) {
    const { context } = view;
    const half = context.measureText(text).width / 2 + 4;
    const reach = [Math.abs(Math.cos(angle)) * half + 8, Math.abs(Math.sin(angle)) * half + 8];
    const box = [x - reach[0], y - reach[1], x + reach[0], y + reach[1]];
    if (taken.some((other) => box[0] < other[2] && box[2] > other[0] && box[1] < other[3] && box[3] > other[1])) {
      return;
    }
    taken.push(box);
    context.save();
    context.translate(x, y);
    context.rotate(angle);
    context.lineWidth = 3;
    context.strokeStyle = S.color('map-ground');
    context.strokeText(text, 0, 0);
    context.fillText(text, 0, 0);
    context.restore();
  }

  /** The middle of the longest piece of a line that is in view, and its direction, so that a name never stands on its head. */
  function longestPiece(view, at) {
    let best = null;
    for (let i = 0; i + 3 < at.length; i += 2) {
      const [x, y] = [(at[i] + at[i + 2]) / 2, (at[i + 1] + at[i + 3]) / 2];
      const size = Math.hypot(at[i + 2] - at[i], at[i + 3] - at[i + 1]);
      if (x > 0 && y > 0 && x < view.width && y < view.height && (!best || size > best.size)) {
        let angle = Math.atan2(at[i + 3] - at[i + 1], at[i + 2] - at[i]);
        angle = angle > Math.PI / 2 ? angle - Math.PI : angle < -Math.PI / 2 ? angle + Math.PI : angle;
        best = { x, y, size, angle };
      }
    }
    return best;
  }

  S.drawStreets = (view) => {
    const { context } = view;
    const inView = S.shapes.streets.filter((street) => S.inView(view, street.line.box));
    context.beginPath();
    const traced = inView.map((street) => ({ name: street.name, at: S.pixels(view, street.line) }));
    traced.forEach((street) => S.trace(context, street.at));
    context.strokeStyle = S.color('map-street');
    context.lineWidth = view.zoom >= 16 ? 6 : view.zoom >= 14 ? 3 : 1.5;
    context.stroke();
    return traced;
  };

  S.drawStreetNames = (view, streets) => {
    if (view.zoom < NAMES_FROM_ZOOM) {
      return;
    }
    const taken = [];
    view.context.font = S.textPixels() + 'px system-ui, sans-serif';
    view.context.textAlign = 'center';
    view.context.textBaseline = 'middle';
    view.context.fillStyle = S.color('map-text');
    for (const street of streets) {
      const piece = street.name && longestPiece(view, street.at);
      if (piece && piece.size > view.context.measureText(street.name).width * 0.7) {
        placeName(view, taken, street.name, piece.x, piece.y - 12, piece.angle);
      }
    }
  };

  S.drawZones = (view) => {
    const { context } = view;
    S.shapes.zones.forEach((zone) => {
      if (!S.inView(view, zone.box)) {
        return;
      }
      context.beginPath();
      zone.rings.forEach((ring) => {
        S.trace(context, S.pixels(view, ring));
        context.closePath();
      });
      context.fillStyle = S.color(zone.color);
      context.globalAlpha = 0.16;
      context.fill('evenodd');
      context.globalAlpha = 1;
      context.strokeStyle = S.color(zone.color);
      context.lineWidth = 1.5;
      context.setLineDash([6, 4]);
      context.stroke();
      context.setLineDash([]);
    });
    context.font = '600 ' + S.textPixels() + 'px system-ui, sans-serif';
    context.textAlign = 'center';
    const taken = [];
    // A name that is wider than its zone would seem to belong to the neighbors too.
    const hasRoom = (zone) => (zone.box[2] - zone.box[0]) * view.scale > context.measureText(zone.label).width * 0.8;
    S.shapes.zones
      .filter((zone) => S.inView(view, zone.box) && hasRoom(zone))
      .forEach((zone) => {
        context.fillStyle = S.color('map-text');
        const [x, y] = [(zone.box[0] + zone.box[2]) / 2, (zone.box[1] + zone.box[3]) / 2];
        placeName(view, taken, zone.label, x * view.scale - view.x, y * view.scale - view.y, 0);
      });
  };

  S.drawCorridors = (view) => {
    const { context } = view;
    context.beginPath();
    S.shapes.corridorSections.forEach((section) => {
      const line = S.shapes.sections[section];
      if (line && S.inView(view, line.box)) {
        S.trace(context, S.pixels(view, line));
      }
    });
    context.globalAlpha = 0.3;
    context.strokeStyle = S.color('map-corridor');
    context.lineWidth = 15;
    context.stroke();
    context.globalAlpha = 1;
  };

  const OUTLINES = {
    vault: (context, x, y, size) => context.rect(x - size, y - size, 2 * size, 2 * size),
    finding: (context, x, y, size) => {
      context.moveTo(x, y - size * 1.3);
      context.lineTo(x + size * 1.2, y + size);
      context.lineTo(x - size * 1.2, y + size);
      context.closePath();
    },
    check: (context, x, y, size) => {
      context.moveTo(x, y - size * 1.4);
      context.lineTo(x + size * 1.4, y);
      context.lineTo(x, y + size * 1.4);
      context.lineTo(x - size * 1.4, y);
      context.closePath();
    },
  };

  function drawMarks(view, kind, marks, size) {
    const { context } = view;
    const drawn = [];
    for (const mark of marks) {
      const [x, y] = [mark.at[0] * view.scale - view.x, mark.at[1] * view.scale - view.y];
      if (x > -10 && y > -10 && x < view.width + 10 && y < view.height + 10) {
        context.beginPath();
        OUTLINES[kind](context, x, y, size);
        context.fillStyle = S.color(mark.color);
        context.strokeStyle = S.color('map-ground');
        context.lineWidth = size > 3 ? 1.5 : 0.5;
        context.fill();
        context.stroke();
        drawn.push({ x, y, lines: mark.lines });
      }
    }
    return drawn;
  }

  /** The year of a section as a number, since colors of years alone are not for everyone. */
  function drawYears(view) {
    const { context } = view;
    context.font = '600 ' + 0.9 * S.textPixels() + 'px system-ui, sans-serif';
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    S.shapes.sections.forEach((line, section) => {
      const year = line && S.inView(view, line.box) ? S.yearOfSection(section) : null;
      if (year) {
        const at = S.pixels(view, line);
        const middle = longestPiece(view, at) || { x: at[0], y: at[1] };
        context.beginPath();
        context.arc(middle.x, middle.y, 8.5, 0, 2 * Math.PI);
        context.fillStyle = S.color('map-ground');
        context.strokeStyle = S.color(S.yearColor(S.data.program.years.indexOf(year)));
        context.lineWidth = 2.5;
        context.fill();
        context.stroke();
        context.fillStyle = S.color('map-text');
        context.fillText(String(year), middle.x, middle.y + 0.5);
      }
    });
  }

  /** Draws the marks that are switched on and remembers them, for what is under the pointer. */
  S.drawMarks = (view) => {
    const drawn = [];
    if (S.layers.vaults && view.zoom >= VAULTS_FROM_ZOOM) {
      drawn.push(...drawMarks(view, 'vault', S.shapes.vaults, view.zoom >= 17 ? 4.5 : 3));
    }
    if (S.layers.colorBy === 'year' && view.zoom >= 14.25) {
      drawYears(view);
    }
    if (S.layers.findings) {
      // From far they would cover the map that they belong to.
      drawn.push(...drawMarks(view, 'finding', S.shapes.findings, view.zoom >= 15 ? 5 : view.zoom >= 13 ? 3.5 : 2));
    }
    if (S.layers.checks) {
      drawn.push(...drawMarks(view, 'check', S.shapes.checks, 5.5));
    }
    S.shapes.marks = drawn;
  };
})(window.Spanroom);
