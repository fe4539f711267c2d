/**
 * Draws as a canvas does, into SVG: on paper a canvas is a coarse picture, or none where a browser prints before it has drawn. It has
 * what the map's drawing uses, no more.
 */
(function (S) {
  'use strict';

  const round = (value) => Math.round(value * 10) / 10;

  S.PaperContext = class {
    constructor(width, height) {
      this.root = S.svg('svg', { viewBox: '0 0 ' + width + ' ' + height, width, height, 'aria-hidden': 'true' });
      this.measure = document.createElement('canvas').getContext('2d');
      this.transforms = [];
      this.dash = [];
      this.globalAlpha = 1;
      this.lineWidth = 1;
      this.beginPath();
    }

    beginPath() {
      this.path = [];
    }

    moveTo(x, y) {
      this.path.push('M' + round(x) + ' ' + round(y));
    }

    lineTo(x, y) {
      this.path.push('L' + round(x) + ' ' + round(y));
    }

    closePath() {
      this.path.push('Z');
    }

    rect(x, y, width, height) {
      this.path.push(
        'M' + round(x) + ' ' + round(y) + 'h' + round(width) + 'v' + round(height) + 'h' + round(-width) + 'Z',
      );
    }

    /** A whole circle, the only arc that the map has. */
    arc(x, y, radius) {
      const half = 'a' + radius + ' ' + radius + ' 0 1 0 ';
      this.path.push('M' + round(x - radius) + ' ' + round(y) + half + 2 * radius + ' 0' + half + -2 * radius + ' 0Z');
    }

    stroke() {
      this.add({
        fill: 'none',
        stroke: this.strokeStyle,
        'stroke-width': this.lineWidth,
        'stroke-dasharray': this.dash.join(' ') || null,
        'stroke-opacity': this.globalAlpha,
      });
    }

    fill(rule) {
      this.add({ fill: this.fillStyle, 'fill-rule': rule || null, 'fill-opacity': this.globalAlpha });
    }

    add(look) {
      if (this.path.length) {
        this.root.append(
          S.svg('path', { d: this.path.join(''), 'stroke-linejoin': 'round', 'stroke-linecap': 'round', ...look }),
        );
      }
    }

    setLineDash(dash) {
      this.dash = dash;
    }

    save() {
      this.transforms = [];
    }

    restore() {
      this.transforms = [];
    }

    translate(x, y) {
      this.transforms.push('translate(' + round(x) + ' ' + round(y) + ')');
    }

    rotate(rad) {
      this.transforms.push('rotate(' + round((rad * 180) / Math.PI) + ')');
    }

    measureText(text) {
      this.measure.font = this.font;
      return this.measure.measureText(text);
    }

    strokeText(text, x, y) {
      this.text(text, x, y, { fill: 'none', stroke: this.strokeStyle, 'stroke-width': this.lineWidth });
    }

    fillText(text, x, y) {
      this.text(text, x, y, { fill: this.fillStyle });
    }

    text(text, x, y, look) {
      this.root.append(
        S.svg(
          'text',
          {
            x: round(x),
            y: round(y),
            transform: this.transforms.join(' ') || null,
            'text-anchor': 'middle',
            'dominant-baseline': 'central',
            style: { font: this.font },
            ...look,
          },
          text,
        ),
      );
    }
  };
})(window.Spanroom);
