import { NOT_YET, withoutServer } from '../state/words.js';
import { keeping } from './keeping.js';
import { on, patch } from './patch.js';
import { afterPress } from './press.js';

/** Making elements without markup in strings, so that what people typed is only ever text. */

const SVG = 'http://www.w3.org/2000/svg';

/**
 * @param {string} spec tag and classes, `button.quiet`
 * @param {object} [props] `on…` are listeners, `text` is text, null and false are left out, all else are attributes
 * @param {...(Node | string | null | false)} children
 */
export function h(spec, props = {}, ...children) {
  const [tag, ...classes] = spec.split('.');
  return fill(document.createElement(tag), classes, props, children);
}

/** The same for drawings. */
export function s(spec, props = {}, ...children) {
  const [tag, ...classes] = spec.split('.');
  return fill(document.createElementNS(SVG, tag), classes, props, children);
}

function fill(element, classes, props, children) {
  if (classes.length) element.setAttribute('class', classes.join(' '));
  for (const [name, value] of Object.entries(props)) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith('on')) on(element, name.slice(2), value);
    else if (name === 'text') element.textContent = value;
    else if (name === 'value') element.value = value;
    else element.setAttribute(name, value === true ? '' : value);
  }
  element.append(...children.flat(Infinity).filter(child => child !== null && child !== false && child !== undefined));
  return element;
}

/** Makes a custom element with properties; `on…` are listeners. */
export function custom(tag, parts) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(parts)) {
    if (name.startsWith('on')) on(element, name.slice(2), value);
    else element[name] = value;
  }
  return element;
}

/** The choices of a select, with the one that stands. @param {[string, string][]} choices value and words */
export const options = (choices, now) => choices.map(([value, text]) => h('option', { value, selected: value === now }, text));

/** A choice with its label. @param {(value: string) => void} change */
export const choiceField = (label, key, now, choices, change) => h('div.field', {}, h('label', { for: idOf(key) }, label),
  h('select', { id: idOf(key), 'data-key': key, onchange: event => change(event.target.value) }, options(choices, now)));

const idOf = key => `choice-${key.replaceAll(' ', '-')}`;

/** A box to tick with its words. @param {(on: boolean) => void} change */
export const tick = (key, text, checked, change, kind = 'tick') => h(`label.${kind}`, {},
  h('input', { type: 'checkbox', 'data-key': key, checked, onchange: event => change(event.target.checked) }), ` ${text}`);

/** Stands where the whole says what is saved; shown once it has stood for a moment. */
export const firstLook = () => h('span.first-look', {}, 'A first look: it may still improve.');

/** A button by its words, its key and what it does. */
export const verb = (text, key, act, more = {}) => h('button', { type: 'button', 'data-key': key, onclick: act, ...more }, text);

/** A form that hands itself on when it is sent; where one of its entries is wrong, the focus goes there instead. */
export const form = (spec, props, sent, ...children) => h(spec, { ...props, onsubmit: event => {
  event.preventDefault();
  const wrong = [...event.target.querySelectorAll('length-field, count-field')].find(field => !field.mayBeEmpty && !field.confirm());
  return wrong ? wrong.input.focus() : sent(event.target);
} }, ...children);

/** A table. @param {Node[]} rows see {@link row} */
export const table = (heads, rows, spec = 'table', props = {}) => h(spec, props,
  h('thead', {}, h('tr', {}, heads.map(text => h('th', { scope: 'col' }, text)))), h('tbody', {}, rows));

/** A row that begins with what it is of. */
export const row = (of, cells, props = {}) => h('tr', props, h('th', { scope: 'row' }, of), cells.map(cell => h('td', {}, cell)));

/** An element of the page. Set `garden` before attaching; `render` is called once attached. */
export class GardenElement extends HTMLElement {
  #ends = [];

  /** @type {import('../state/garden.js').Garden} */
  garden = null;

  /** What of the garden it shows, by name: it is drawn when it is attached and again with every change of one of these. */
  follows = [];

  /** Parts of the job sheet that it shows, by name, beside those that are always there: asked for while it is on the page. */
  shows = [];

  /** Its role and name, where it is a part of the page to go to. */
  named = null;

  connectedCallback() {
    if (this.named) ['role', 'aria-label'].forEach((name, i) => this.setAttribute(name, this.named[i]));
    this.attached();
  }

  attached() {
    if (this.shows.length) this.atEnd(this.garden.reckoning.shown.want(this.shows));
    this.follow(this.follows.map(name => this.garden[name]), () => this.render());
    this.render();
  }

  disconnectedCallback() {
    for (const end of this.#ends) end();
    this.#ends = [];
  }

  /** Listens until the element leaves the page. */
  listen(target, type, handler, options) {
    target.addEventListener(type, handler, options);
    this.atEnd(() => target.removeEventListener(type, handler, options));
  }

  /** Runs when the element leaves the page. */
  atEnd(end) { this.#ends.push(end); }

  /** True where a press inside must not hold back what is shown. */
  drawsWhilePressed = false;

  /** Calls `handler` at the next frame after any of the events, once however many came; see keeping.js for what it leaves as it is. */
  follow(targets, draw) {
    const handler = () => keeping(this, draw);
    let asked = 0;
    const ask = () => {
      asked ||= requestAnimationFrame(() => {
        asked = 0;
        if (this.isConnected) this.drawsWhilePressed ? handler() : afterPress(this, () => this.isConnected && handler());
      });
    };
    for (const target of targets) this.listen(target, 'change', ask);
  }

  /** Brings the children up to these, the old nodes kept where they can be. */
  rebuild(...children) { patch(this, children); }

  /** Where another element of the same kind was made for its place, this one stays: it follows its garden itself. */
  takeOver() {}

  /** Changes the garden by one step. @param {(plan: object) => object} command */
  run(command) { this.garden.plans.run(command); }

  /** Does something with the server, says what went wrong, and draws what came of it. @param {string | null} what is said before the reason */
  async try(what, act) {
    this.problem = null;
    try {
      await act();
    } catch (problem) {
      this.problem = what ? `${what}: ${problem.message}` : problem.message;
      this.say(this.problem);
    }
    if (this.isConnected) this.render();
  }

  /** Shows why something cannot be done. */
  refuse(why) {
    this.problem = why;
    this.render();
  }

  /** Why what was tried last did not go, null where it did. */
  problem = null;

  /** The same as a line, null for none. */
  wrong() { return this.problem && h('p.hint.wrong', { role: 'alert' }, this.problem); }

  /** A line where something of what it shows did not come yet, else null. */
  lacking() {
    const { reckoning } = this.garden;
    return reckoning.lacks(this.shows) ? h('p.hint', {}, reckoning.problem ?? (reckoning.why === null ? 'Reckoning …' : `${withoutServer(NOT_YET, reckoning.why)}.`)) : null;
  }

  /** Opens a place and moves the focus there: see places.js. */
  openPlace(key) { this.dispatchEvent(new CustomEvent('open-place', { detail: key, bubbles: true })); }

  /** Asks for something that can be done from everywhere: see page-acts.js. */
  ask(act, detail = {}) { this.dispatchEvent(new CustomEvent('act', { detail: { act, ...detail }, bubbles: true })); }

  /** Says something to those who hear the page. */
  say(text) { this.dispatchEvent(new CustomEvent('say', { detail: text, bubbles: true })); }
}
