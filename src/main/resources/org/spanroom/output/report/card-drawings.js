/** The cross-sections of a span. */
(function (S) {
  'use strict';

  /** The cross-sections; each is a document of its own, read as XML and stripped of all that could act. */
  S.drawingsPart = (drawings) =>
    S.el(
      'div',
      { class: 'drawings' },
      drawings.map((drawing, place) => {
        const parsed = new DOMParser().parseFromString(drawing.svg, 'image/svg+xml').documentElement;
        if (parsed.nodeName !== 'svg') {
          return null;
        }
        const picture = document.importNode(parsed, true);
        picture.querySelectorAll('script, foreignObject').forEach((node) => node.remove());
        for (const node of [picture, ...picture.querySelectorAll('*')]) {
          for (const attribute of [...node.attributes]) {
            if (/^on/i.test(attribute.name)) {
              node.removeAttribute(attribute.name);
            } else if (attribute.name === 'id') {
              node.id = 'drawing-' + place + '-' + node.id;
            } else if (attribute.value.includes('url(#')) {
              attribute.value = attribute.value.replaceAll('url(#', 'url(#drawing-' + place + '-');
            }
          }
        }
        picture.setAttribute('role', 'img');
        picture.setAttribute('aria-label', 'Cross-section: ' + drawing.label);
        return S.el('figure', {}, picture, S.el('figcaption', {}, drawing.label));
      }),
    );
})(window.Spanroom);
