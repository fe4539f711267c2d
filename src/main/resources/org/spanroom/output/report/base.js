/**
 * What every other script of the page uses: making elements, and writing numbers for people.
 *
 * Data enters the page as text nodes only. No script here sets innerHTML, so that no name in a GIS file can become markup.
 */
window.Spanroom = {};

(function (S) {
  'use strict';

  const SVG = 'http://www.w3.org/2000/svg';
  const NUMBERS = new Map();

  function fill(node, attributes, children) {
    for (const [name, value] of Object.entries(attributes || {})) {
      if (name === 'on') {
        for (const [event, listener] of Object.entries(value)) {
          node.addEventListener(event, listener);
        }
      } else if (name === 'style') {
        // Through the object model, which the policy of the page allows in any case.
        for (const [property, text] of Object.entries(value)) {
          node.style.setProperty(property, text);
        }
      } else if (value === true) {
        node.setAttribute(name, '');
      } else if (value !== false && value !== null && value !== undefined) {
        node.setAttribute(name, String(value));
      }
    }
    for (const child of children.flat(Infinity)) {
      if (child !== null && child !== undefined && child !== '') {
        node.append(child.nodeType ? child : String(child));
      }
    }
    return node;
  }

  /** Makes an element; `on` holds listeners, `style` properties, `true` an attribute without a value. */
  S.el = (tag, attributes, ...children) => fill(document.createElement(tag), attributes, children);

  /** The same for SVG. */
  S.svg = (tag, attributes, ...children) => fill(document.createElementNS(SVG, tag), attributes, children);

  S.byId = (id) => document.getElementById(id);

  /** Replaces all children of a node. */
  S.put = (node, ...children) => {
    node.replaceChildren(...children.flat(Infinity).filter((child) => child !== null && child !== undefined));
    return node;
  };

  /** A number with separators and this many decimals; '' for an unknown one. */
  S.number = (value, decimals = 0) => {
    if (value === null || value === undefined || Number.isNaN(value)) {
      return '';
    }
    // A formatter is slow to make, and a table has thousands of cells.
    if (!NUMBERS.has(decimals)) {
      NUMBERS.set(
        decimals,
        new Intl.NumberFormat('en-US', {
          minimumFractionDigits: decimals,
          maximumFractionDigits: decimals,
        }),
      );
    }
    return NUMBERS.get(decimals).format(value);
  };

  /** A number for a label that has little room: 1.2 million, 350 k. */
  S.short = (value) => {
    const size = Math.abs(value);
    if (size >= 1e6) {
      return S.number(value / 1e6, size >= 1e7 ? 0 : 1) + ' M';
    }
    return size >= 1e4 ? S.number(value / 1e3, 0) + ' k' : S.number(value, size < 10 && value % 1 ? 1 : 0);
  };

  /** An amount in the run's currency, without cents: all of them are estimates. */
  S.money = (value) =>
    value === null || value === undefined || Number.isNaN(value)
      ? ''
      : S.currency + ' ' + S.number(Math.round(value), 0);

  /** Says something to a screen reader. */
  S.announce = (text) => {
    S.byId('live').textContent = text;
  };

  /** Calls back once within a frame, however often it is asked to. */
  S.oncePerFrame = (action) => {
    let waiting = false;
    return () => {
      if (!waiting) {
        waiting = true;
        requestAnimationFrame(() => {
          waiting = false;
          action();
        });
      }
    };
  };

  /** Offers a text as a file. */
  S.download = (name, type, text) => {
    const address = URL.createObjectURL(new Blob([text], { type }));
    const link = S.el('a', { href: address, download: name });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(address), 1000);
  };

  /** The size of small text in pixels, for drawings, which do not inherit it. */
  S.textPixels = () => 0.75 * parseFloat(getComputedStyle(document.documentElement).fontSize);

  S.prefersLessMotion = () => window.matchMedia('(prefers-reduced-motion: reduce)').matches;
})(window.Spanroom);
