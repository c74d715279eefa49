// Elements by name, attributes and children; for drawings and for the page.

const SVG = "http://www.w3.org/2000/svg";

/** An element of a drawing. */
export function draw(name, attributes = {}, ...children) {
  return dress(document.createElementNS(SVG, name), attributes, children);
}

/** An element of the page. */
export function make(name, attributes = {}, ...children) {
  return dress(document.createElement(name), attributes, children);
}

function dress(element, attributes, children) {
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith("on")) element.addEventListener(key.slice(2), value);
    else if (value === true) element.setAttribute(key, "");
    else if (value !== false && value !== null && value !== undefined) element.setAttribute(key, value);
  }
  element.append(...children);
  return element;
}
