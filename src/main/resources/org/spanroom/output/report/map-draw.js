/**
 * Draws sections and spans on canvases of the map. One path of many lines for each class is some hundred times quicker than an object
 * for each line, and one decides alone what lies above what.
 */
(function (S) {
  'use strict';

  /** From this zoom on the spans of a bank are drawn side by side; below, one line stands for a section. */
  const SPANS_FROM_ZOOM = 17;

  /** A canvas that moves with the map; `painter` gets where to draw. */
  S.CanvasLayer = L.Renderer.extend({
    initialize(painter, options) {
      this.painter = painter;
      L.Renderer.prototype.initialize.call(this, options);
    },
    _initContainer() {
      this._container = document.createElement('canvas');
      this._container.setAttribute('aria-hidden', 'true');
    },
    _destroyContainer() {
      this._container.remove();
      delete this._container;
    },
    _update() {
      if (this._map._animatingZoom && this._bounds) {
        return;
      }
      L.Renderer.prototype._update.call(this);
      this.paint();
    },
    /** Draws again where the map is. */
    paint() {
      if (!this._map || !this._bounds) {
        return;
      }
      const size = this._bounds.getSize();
      const dense = Math.min(window.devicePixelRatio || 1, 3);
      const canvas = this._container;
      L.DomUtil.setPosition(canvas, this._bounds.min);
      canvas.width = size.x * dense;
      canvas.height = size.y * dense;
      canvas.style.width = size.x + 'px';
      canvas.style.height = size.y + 'px';
      const zoom = this._map.getZoom();
      const corner = this._map.getPixelOrigin().add(this._bounds.min);
      const scale = 2 ** zoom;
      const context = canvas.getContext('2d');
      context.setTransform(dense, 0, 0, dense, 0, 0);
      context.lineJoin = 'round';
      context.lineCap = 'round';
      this.painter({
        context,
        zoom,
        scale,
        x: corner.x,
        y: corner.y,
        width: size.x,
        height: size.y,
        box: [corner.x / scale, corner.y / scale, (corner.x + size.x) / scale, (corner.y + size.y) / scale],
      });
    },
  });

  S.inView = (view, box) =>
    box && box[0] <= view.box[2] && box[2] >= view.box[0] && box[1] <= view.box[3] && box[3] >= view.box[1];

  /** The pixels of a line. */
  S.pixels = (view, line) => {
    const at = new Float64Array(line.at.length);
    for (let i = 0; i < at.length; i += 2) {
      at[i] = line.at[i] * view.scale - view.x;
      at[i + 1] = line.at[i + 1] * view.scale - view.y;
    }
    return at;
  };

  S.trace = (context, at) => {
    context.moveTo(at[0], at[1]);
    for (let i = 2; i < at.length; i += 2) {
      context.lineTo(at[i], at[i + 1]);
    }
  };

  S.showsSpans = (view) => view.zoom >= SPANS_FROM_ZOOM;

  /** How far a span is drawn to the right of its line, in pixels. */
  const aside = (view, row) => (S.spans.value(row, 'bank_place') || 0) * (view.zoom >= 18 ? 7 : 5);

  S.spanPixels = (view, row) => {
    const line = S.shapes.spans[row];
    return line ? S.movedAside(S.pixels(view, line), aside(view, row)) : null;
  };

  /** The best span of each section among those shown; -1 where none is. */
  S.bestShown = () =>
    S.data.sections.spans.map((rows) => {
      let best = -1;
      for (const row of rows) {
        if (S.live.isShown[row] && (best < 0 || (S.live.ranks[row] || Infinity) < (S.live.ranks[best] || Infinity))) {
          best = row;
        }
      }
      return best;
    });

  const yearOf = (row) => (S.spans.raw.year && S.spans.raw.year[row]) || null;

  /** The first year in which one of a section's shown spans is recovered. */
  S.yearOfSection = (section) =>
    S.data.sections.spans[section]
      .filter((row) => S.live.isShown[row])
      .map(yearOf)
      .filter(Boolean)
      .sort((a, b) => a - b)[0] || null;

  /** What class a line is drawn with: {color, width, order}. */
  function styleOf(row, year) {
    if (S.layers.colorBy === 'year') {
      return year
        ? { color: S.yearColor(S.data.program.years.indexOf(year)), width: 4.5, order: 100 - year }
        : { color: 'map-faint', width: 1.3, order: -1 };
    }
    const place = S.classOf(S.live.ranks[row]);
    const known = S.rankClasses[place];
    return { color: known.key, width: known.width, order: S.rankClasses.length - place };
  }

  /** Every line in view with how it is drawn, the least important first. */
  function lines(view) {
    const found = [];
    if (S.showsSpans(view)) {
      for (let row = 0; row < S.spans.rows; row++) {
        const line = S.shapes.spans[row];
        if (line && S.inView(view, line.box)) {
          const style = S.live.isShown[row] ? styleOf(row, yearOf(row)) : null;
          found.push({ row, style, at: S.spanPixels(view, row) });
        }
      }
    } else {
      S.shapes.sections.forEach((line, section) => {
        if (line && S.inView(view, line.box)) {
          const row = S.shapes.best[section];
          const style = row >= 0 ? styleOf(row, S.layers.colorBy === 'year' ? S.yearOfSection(section) : null) : null;
          found.push({ row, section, style, at: S.pixels(view, line) });
        }
      });
    }
    return found.sort((a, b) => (a.style ? a.style.order : -2) - (b.style ? b.style.order : -2));
  }

  function stroke(context, group, color, width) {
    context.beginPath();
    group.forEach((line) => S.trace(context, line.at));
    context.strokeStyle = color;
    context.lineWidth = width;
    context.stroke();
  }

  /** Draws all lines and remembers them, for what is under the pointer. */
  S.drawLines = (view) => {
    const all = lines(view);
    const thin = (view.zoom < 14 ? 0.75 : 1) * Math.max(1, S.textPixels() / 12);
    for (let from = 0; from < all.length;) {
      const { style } = all[from];
      let to = from;
      while (to < all.length && (all[to].style ? all[to].style.color : '') === (style ? style.color : '')) {
        to++;
      }
      const group = all.slice(from, to);
      if (!style) {
        stroke(view.context, group, S.color('map-faint'), 1);
      } else {
        // A rim in the color of the ground keeps crossing lines apart.
        if (style.width > 2) {
          stroke(view.context, group, S.color('map-ground'), style.width * thin + 2);
        }
        stroke(view.context, group, S.color(style.color), style.width * thin);
      }
      from = to;
    }
    S.shapes.drawn = { view, lines: all };
  };

  /** Draws the span of the card, and the one under the pointer, above all else. */
  S.drawChosen = (view) => {
    for (const [row, color] of [
      [S.live.hover, 'map-hover'],
      [S.live.selected, 'map-selected'],
    ]) {
      const section = row === null ? null : S.spans.raw.section[row];
      const line =
        row === null ? null : S.showsSpans(view) || section === null ? S.shapes.spans[row] : S.shapes.sections[section];
      if (line) {
        const at = S.showsSpans(view) ? S.spanPixels(view, row) : S.pixels(view, line);
        const known = S.rankClasses[S.classOf(S.live.ranks[row])];
        stroke(view.context, [{ at }], S.color('map-ground'), known.width + 11);
        stroke(view.context, [{ at }], S.color(color), known.width + 7);
        stroke(view.context, [{ at }], S.color('map-ground'), known.width + 2.5);
        stroke(view.context, [{ at }], S.color(known.key), known.width);
      }
    }
  };
})(window.Spanroom);
