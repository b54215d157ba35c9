/** Makes elements. Text goes in as text nodes only; nothing here reads markup. */

const SVG = 'http://www.w3.org/2000/svg';

/**
 * An HTML element.
 *
 * @param attributes name → value; null, undefined and false leave it out, true sets it bare; `on` holds listeners
 * @param children nodes or strings; null, undefined and false are left out
 */
export const el = (tag, attributes = {}, ...children) => fill(document.createElement(tag), attributes, children);

/** The same in the SVG namespace. */
export const svg = (tag, attributes = {}, ...children) =>
  fill(document.createElementNS(SVG, tag), attributes, children);

function fill(node, { on = {}, ...attributes }, children) {
  set(node, attributes);
  for (const [type, listener] of Object.entries(on)) {
    node.addEventListener(type, listener);
  }
  node.append(...present(children));
  return node;
}

/** Sets attributes the way `el` does; returns the node. */
export function set(node, attributes) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name === 'style') {
      throw new Error('the content security policy refuses style attributes; use a class or the style property');
    }
    if (value === null || value === undefined || value === false) {
      node.removeAttribute(name);
    } else {
      node.setAttribute(name, value === true ? '' : String(value));
    }
  }
  return node;
}

/** Puts children in the place of all that a node holds. */
export function replace(node, ...children) {
  node.replaceChildren(...present(children));
}

function present(children) {
  return children.flat(Infinity).filter(child => child !== null && child !== undefined && child !== false);
}

/** Sets text only when it differs, so that a live region speaks no more than once. */
export function say(node, text) {
  if (node.textContent !== text) {
    node.textContent = text;
  }
}

/**
 * Keeps the place of whoever uses keys alone while buttons cannot be used: one that has the focus loses it with that.
 * To be called before buttons are switched off, and after they are on again; the focus goes back to the button, or
 * where it is gone to `instead`, unless somebody has gone elsewhere meanwhile.
 *
 * @returns hold(waiting)
 */
export function focusHeld(root, instead) {
  let held = null;
  return waiting => {
    const now = document.activeElement;
    if (waiting) {
      held = root.contains(now) && now.matches('button') ? now : held;
      return;
    }
    const before = held;
    held = null;
    if (before !== null && (now === document.body || now === before)) {
      const usable = before.isConnected && !before.disabled && before.checkVisibility();
      (usable ? before : instead).focus({ preventScroll: true });
    }
  };
}

/** Whether the user asked for less motion. */
export const calm = () => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

/**
 * Calls `draw(widthPx)` when the node first has a width and whenever it changes, for print too, which leaves no time
 * to wait for the observer; returns the function that stops it.
 */
export function onWidth(node, draw) {
  let width = -1;
  const check = () => {
    if (node.clientWidth === width) {
      return;
    }
    // What was out of sight may have been left undrawn meanwhile, and comes back as wide as it was.
    width = node.clientWidth;
    if (width > 0) {
      draw(width);
    }
  };
  const observer = new ResizeObserver(check);
  observer.observe(node);
  window.addEventListener('beforeprint', check);
  window.addEventListener('afterprint', check);
  return () => {
    observer.disconnect();
    window.removeEventListener('beforeprint', check);
    window.removeEventListener('afterprint', check);
  };
}

/**
 * Arrow keys between the items of a group that is one tab stop. The current item is the one tab stop there is.
 *
 * @param next (key, item) → the item to go to, or null
 */
export function roving(root, selector, next) {
  root.addEventListener('keydown', event => {
    const item = event.target.closest(selector);
    const target = item && !event.altKey && !event.ctrlKey && !event.metaKey && next(event.key, item);
    if (target) {
      event.preventDefault();
      event.stopPropagation();
      makeTabStop(root, selector, target);
      target.focus();
    }
  });
}

/** Makes one item of a group its tab stop. */
export function makeTabStop(root, selector, target) {
  root.querySelectorAll(selector).forEach(item => item.setAttribute('tabindex', item === target ? '0' : '-1'));
}

/** The `next` of a plain row of items, in the order they stand in or in another one. */
export function alongRow(root, selector, order) {
  return (key, item) => {
    const items = [...root.querySelectorAll(selector)].sort(order ?? (() => 0));
    const index = items.indexOf(item);
    switch (key) {
      case 'ArrowRight': case 'ArrowDown': return items[index + 1] ?? null;
      case 'ArrowLeft': case 'ArrowUp': return items[index - 1] ?? null;
      case 'Home': return items[0];
      case 'End': return items[items.length - 1];
      default: return null;
    }
  };
}
