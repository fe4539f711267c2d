/** The map on paper: what the window shows, drawn again as SVG, with a scale of its own. */
(function (S) {
  'use strict';

  /** A length that reads well and is at most this long. */
  function roundLength(most) {
    const power = 10 ** Math.floor(Math.log10(most));
    return power * [5, 2, 1].find((digit) => digit * power <= most);
  }

  function drawScale({ context, scale, height }) {
    const metersPerPixel = (40075016.686 * Math.cos((S.leafletMap.getCenter().lat * Math.PI) / 180)) / (256 * scale);
    const perUnit = S.data.lengthUnit === 'ft' ? 0.3048 : 1;
    const length = roundLength((150 * metersPerPixel) / perUnit);
    const pixels = (length * perUnit) / metersPerPixel;
    context.beginPath();
    context.moveTo(12, height - 18);
    context.lineTo(12, height - 12);
    context.lineTo(12 + pixels, height - 12);
    context.lineTo(12 + pixels, height - 18);
    context.strokeStyle = S.color('ink');
    context.lineWidth = 1.5;
    context.stroke();
    context.font = S.textPixels() + 'px system-ui, sans-serif';
    context.fillStyle = S.color('ink');
    context.fillText(S.number(length) + ' ' + S.data.lengthUnit, 12 + pixels / 2, height - 24);
  }

  /** The map as it stands, drawn for paper: at least what the window shows, in a frame of this many pixels. */
  S.paperMap = (width, height) => {
    const map = S.leafletMap;
    const size = map.getSize();
    const ratio = Math.min(width / size.x, height / size.y);
    const scale = 2 ** map.getZoom() * ratio;
    const center = map.project(map.getCenter(), 0);
    const [x, y] = [center.x * scale - width / 2, center.y * scale - height / 2];
    const context = new S.PaperContext(width, height);
    const view = {
      context,
      zoom: Math.log2(scale),
      scale,
      x,
      y,
      width,
      height,
      box: [x / scale, y / scale, (x + width) / scale, (y + height) / scale],
    };
    S.paintMap(view);
    S.drawChosen(view);
    drawScale(view);
    return context.root;
  };
})(window.Spanroom);
