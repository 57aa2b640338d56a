import { withoutDirectionMarks } from '../../notation/direction-marks';
import type { CommonTexts } from '../page-parts';

/** Something that an element holds; text is always text, never markup. */
export type Child = Node | string | undefined;

/**
 * Makes an element. Attributes with the value `undefined` or `false` are left out, those with `true` are empty.
 */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Readonly<Record<string, string | number | boolean | undefined>>,
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined && value !== false)
      made.setAttribute(name, value === true ? '' : withoutDirectionMarks(String(value)));
  }
  for (const child of children)
    if (child !== undefined) made.append(typeof child === 'string' ? withoutDirectionMarks(child) : child);
  return made;
}

const svgSpace = 'http://www.w3.org/2000/svg';

/** A shape of a picture: the name of its SVG element and its attributes. */
export type Shape = readonly [string, Readonly<Record<string, string | number>>];

/** Makes a picture that screen readers pass over. */
export function drawing(viewBox: string, className: string, shapes: readonly Shape[]): Element {
  const svg = document.createElementNS(svgSpace, 'svg');
  for (const [name, value] of [
    ['viewBox', viewBox],
    ['class', className],
    ['aria-hidden', 'true'],
  ] as const) {
    svg.setAttribute(name, value);
  }
  for (const [tag, attributes] of shapes) {
    const shape = document.createElementNS(svgSpace, tag);
    for (const [name, value] of Object.entries(attributes)) shape.setAttribute(name, String(value));
    svg.append(shape);
  }
  return svg;
}

/** Makes a small picture of 24 by 12 units that screen readers pass over. */
export function picture(...shapes: readonly Shape[]): Element {
  return drawing('0 0 24 12', 'sign', shapes);
}

/** A button with words in it. */
export function button(words: string, key: string, onClick: () => void): HTMLButtonElement {
  const made = element('button', { type: 'button', 'data-key': key }, words);
  made.addEventListener('click', onClick);
  return made;
}

/** The end of every page: the way to the guide, and the caution. */
export function pageFoot(texts: CommonTexts, openGuide: () => void): HTMLElement {
  return element(
    'div',
    { class: 'foot' },
    button(texts.guide, 'guide', openGuide),
    element('p', { class: 'caution' }, texts.caution),
  );
}
