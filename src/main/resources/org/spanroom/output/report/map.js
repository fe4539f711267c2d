/** The map: what is under the pointer, going to a span, and the controls around it. */
(function (S) {
  'use strict';

  const NEAR_PIXELS = 9;

  /** What is drawn; the legend changes it. */
  S.layers = {
    streets: true,
    zones: false,
    corridors: false,
    vaults: true,
    findings: false,
    checks: false,
    colorBy: 'rank',
  };

  let map = null;
  let ground = null;
  let above = null;
  let isMoved = false;

  /** Draws all but what is chosen. */
  S.paintMap = (view) => {
    const streets = S.layers.streets ? S.drawStreets(view) : [];
    if (S.layers.zones) {
      S.drawZones(view);
    }
    if (S.layers.corridors) {
      S.drawCorridors(view);
    }
    S.drawLines(view);
    S.drawStreetNames(view, streets);
    S.drawMarks(view);
  };

  /** What is nearest to a place of the map: a mark before a line. */
  function under(containerPoint) {
    const layerPoint = map.containerPointToLayerPoint(containerPoint);
    const { view, lines } = S.shapes.drawn;
    const origin = map.getPixelOrigin();
    const [x, y] = [layerPoint.x + origin.x - view.x, layerPoint.y + origin.y - view.y];
    const mark = S.shapes.marks.find((one) => Math.hypot(one.x - x, one.y - y) < NEAR_PIXELS);
    let best = null;
    let square = NEAR_PIXELS ** 2;
    for (const line of lines) {
      if (line.row >= 0 && line.style) {
        const found = S.squareToLine(line.at, x, y);
        // Later lines are drawn above, so they win a draw.
        if (found <= square) {
          square = found;
          best = line;
        }
      }
    }
    return { mark, line: best };
  }

  function textsOf({ mark, line }) {
    if (mark) {
      return mark.lines;
    }
    const rank = S.live.ranks[line.row];
    const beside = line.section === undefined ? 0 : S.data.sections.spans[line.section].length;
    const years = S.spans.raw.year && S.spans.raw.year[line.row];
    return [
      S.spans.value(line.row, 'span_id'),
      rank
        ? 'Rank ' + S.number(rank) + ', ' + S.number(S.live.points[line.row], 1) + ' points'
        : 'Excluded: ' + S.word('exclusion', S.spans.value(line.row, 'exclusion') || ''),
      rank
        ? '+' +
          S.spans.value(line.row, 'positions_gained') +
          ' positions, ' +
          S.money(S.spans.value(line.row, 'recovery_likely_money') || S.spans.value(line.row, 'recovery_money'))
        : '',
      years ? 'In the program: year ' + years : '',
      beside > 1 ? 'Best of ' + beside + ' spans side by side' : '',
    ].filter(Boolean);
  }

  function showTip(point, found) {
    const tip = S.byId('map-tip');
    tip.hidden = !(found.mark || found.line);
    if (!tip.hidden) {
      S.put(
        tip,
        textsOf(found).map((text) => S.el('div', {}, text)),
      );
      const room = map.getSize();
      tip.style.left = Math.max(8, Math.min(point.x + 14, room.x - tip.offsetWidth - 8)) + 'px';
      tip.style.top =
        Math.max(8, point.y + 18 + tip.offsetHeight > room.y ? point.y - tip.offsetHeight - 12 : point.y + 18) + 'px';
    }
  }

  function listen() {
    map.on('mousemove', (event) => {
      const found = under(event.containerPoint);
      map.getContainer().classList.toggle('can-click', Boolean(found.line));
      showTip(event.containerPoint, found);
      S.hoverOver(found.line ? found.line.row : null);
    });
    map.on('mouseout movestart', () => {
      S.byId('map-tip').hidden = true;
      S.hoverOver(null);
    });
    map.on('click', (event) => {
      const { line } = under(event.containerPoint);
      if (line) {
        S.select(line.row, { from: 'map' });
      }
    });
    // The wheel scrolls the page until one works with the map, so that it does not catch readers on their way down.
    map.on('focus click', () => map.scrollWheelZoom.enable());
    map.on('blur', () => map.scrollWheelZoom.disable());
    map.getContainer().addEventListener('mouseleave', () => map.scrollWheelZoom.disable());
  }

  const boundsOf = (box) => L.latLngBounds(S.toLatLng([box[0], box[3]]), S.toLatLng([box[2], box[1]]));

  function wholeBox() {
    return S.joinBoxes(
      S.shapes.spans
        .concat(S.shapes.sections)
        .filter(Boolean)
        .map((line) => line.box),
    );
  }

  /** Shows all that is ranked, or whatever there is. */
  S.showWholeMap = () => {
    const box = wholeBox();
    if (box) {
      map.fitBounds(boundsOf(box), { padding: [16, 16], animate: false });
    }
  };

  /** Goes to a span, near enough that its bank can be seen. */
  S.goToSpan = (row) => {
    const line = S.shapes.spans[row];
    if (line) {
      isMoved = true;
      map.flyToBounds(boundsOf(line.box), {
        maxZoom: 17.5,
        padding: [60, 60],
        animate: !S.prefersLessMotion(),
        duration: 0.6,
      });
    }
  };

  function follow() {
    const { selected, selectOptions } = S.live;
    const line = selected === null ? null : S.shapes.spans[selected];
    if (line && selectOptions.from !== 'map' && !map.getBounds().pad(-0.1).intersects(boundsOf(line.box))) {
      isMoved = true;
      map.panTo(boundsOf(line.box).getCenter(), { animate: !S.prefersLessMotion() });
    }
    above.paint();
  }

  S.repaintMap = () => {
    S.shapes.best = S.bestShown();
    ground.paint();
    above.paint();
  };

  S.startMap = () => {
    S.readShapes();
    S.shapes.best = S.bestShown();
    map = L.map('map-view', {
      attributionControl: false,
      scrollWheelZoom: false,
      zoomSnap: 0.25,
      wheelPxPerZoomLevel: 90,
      minZoom: 3,
      maxZoom: 21,
      zoomAnimation: !S.prefersLessMotion(),
      fadeAnimation: false,
      inertia: !S.prefersLessMotion(),
      zoomControl: false,
    });
    L.control.zoom({ zoomInTitle: 'Zoom in', zoomOutTitle: 'Zoom out' }).addTo(map);
    L.control.scale({ position: 'bottomleft', maxWidth: 140 }).addTo(map);
    const { tiles, attribution } = document.body.dataset;
    if (tiles) {
      L.tileLayer(tiles, { maxZoom: 21, maxNativeZoom: 19, className: 'tiles' }).addTo(map);
      S.byId('map-credit').textContent = attribution || '';
    }
    S.leafletMap = map;
    map.setView([0, 0], 3);
    S.showWholeMap();
    ground = new S.CanvasLayer(S.paintMap).addTo(map);
    above = new S.CanvasLayer(S.drawChosen).addTo(map);
    listen();
    S.byId('map-whole').addEventListener('click', () => {
      isMoved = false;
      S.showWholeMap();
    });
    // Until someone moves the map it shows the whole area, whatever its size becomes.
    map.getContainer().addEventListener('pointerdown', () => {
      isMoved = true;
    });
    map.getContainer().addEventListener('keydown', () => {
      isMoved = true;
    });
    new ResizeObserver(
      S.oncePerFrame(() => {
        map.invalidateSize({ animate: false });
        if (!isMoved) {
          S.showWholeMap();
        }
      }),
    ).observe(S.byId('map-view'));
    const repaint = S.oncePerFrame(S.repaintMap);
    S.on('rows', repaint);
    S.on('layers', repaint);
    S.on('theme', S.repaintMap);
    S.on(
      'hover',
      S.oncePerFrame(() => above.paint()),
    );
    S.on('selected', follow);
  };
})(window.Spanroom);
