import { further } from '../geometry/drawing.js';
import { shown } from '../geometry/length.js';
import { lengthField } from './length-field.js';
import { form, GardenElement, h } from './make.js';
import { patch } from './patch.js';
import { orMore, placeCheck } from '../state/checks.js';

const BEGIN = { point: 'Press where it stands', line: 'Press where it begins', outline: 'Press its first corner' };

const ARROWS = [['left', '←', 'to the left'], ['back', '↑', 'away from the house'], ['front', '↓', 'towards the house'], ['right', '→', 'to the right']];

/** draw-bar: while something is drawn in the yard, points can be typed here as well. Set `yard`. */
export class DrawBar extends GardenElement {
  #sketch = null;
  #before = null;

  attached() {
    this.setAttribute('role', 'region');
    this.hidden = true;
    this.listen(this.yard, 'sketched', event => this.#begin(event.detail));
    // not sooner: on a phone the table is hidden until then, and takes no focus
    this.listen(this.yard, 'sketch-ended', () => { if (this.#before?.isConnected) this.#before.focus(); });
    this.listen(this, 'keydown', event => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      this.#sketch?.leave();
    });
  }

  #begin(sketch) {
    this.#before = document.activeElement;
    this.#sketch = sketch;
    this.hidden = false;
    this.setAttribute('aria-label', `Drawing: ${sketch.name}`);
    this.replaceChildren();
    this.#build(sketch);
    this.listen(sketch, 'change', () => { if (this.#sketch === sketch) this.#show(); });
    this.#show();
    this.#along.input.focus();
    this.say(`${sketch.name}: ${BEGIN[sketch.as].toLowerCase()} in the yard, or type its place.`);
  }

  #along; #away; #leg; #head; #verbs;

  #build(sketch) {
    const { units } = this.yard;
    const check = mm => placeCheck(mm, units);
    this.#along = lengthField({ label: 'Along the house', units, many: true, check, key: 'draw along',
      onlength: ({ detail }) => { if (detail.more !== undefined) this.#away.show(detail.more); } });
    this.#away = lengthField({ label: 'Away from it', units, check, key: 'draw away' });
    this.#leg = lengthField({ label: 'Or further by', units, check: mm => (mm > 0 ? check(mm) : `${shown(mm, units)} is no way to go. ${orMore(1, units)}`), key: 'draw further' });
    this.#head = h('p.said');
    this.#verbs = h('div.verbs');
    this.append(this.#head,
      form('form.typed', { novalidate: true }, () => this.#putTyped(), this.#along, this.#away, h('button', { type: 'submit', 'data-key': 'draw put' }, 'Put it')),
      sketch.as === 'point' ? '' : h('div.typed', {}, this.#leg, h('div.arrows', {}, ARROWS.map(([way, sign, name]) =>
        h('button', { type: 'button', 'data-key': `draw ${way}`, 'aria-label': name, title: name, onclick: () => this.#goOn(way) }, sign)))),
      this.#verbs);
  }

  #show() {
    const sketch = this.#sketch;
    if (sketch.ended) return this.#end();
    const last = sketch.points.at(-1);
    const said = last ? `${sketch.points.length} put, the last at ${last.map(mm => this.yard.lengthText(mm)).join(', ')}.` : `${BEGIN[sketch.as]}, or type its place.`;
    this.#head.replaceChildren(h('strong', {}, sketch.name), ` ${said}`);
    patch(this.#verbs, [
      sketch.as === 'point' ? null : h('button.main', { type: 'button', 'data-key': 'draw done', 'aria-disabled': sketch.isEnough ? null : 'true', onclick: () => this.#done() }, 'Done'),
      sketch.as === 'point' ? null : h('button', { type: 'button', 'data-key': 'draw last', title: 'Delete the last point', onclick: () => this.#sketch.takeBack() }, 'Undo point'),
      h('button', { type: 'button', 'data-key': 'draw leave', onclick: () => this.#sketch.leave() }, 'Cancel')]);
    return undefined;
  }

  #putTyped() {
    this.#put([this.#along.length, this.#away.length]);
    if (!this.#sketch?.ended) this.#along.input.select();
  }

  #goOn(way) {
    const last = this.#sketch.points.at(-1);
    if (!last) {
      this.say('Put a first point: type its place above.');
      return this.#along.input.focus();
    }
    if (!this.#leg.confirm()) return this.#leg.input.focus();
    return this.#put(further(last, way, this.#leg.length));
  }

  #put(point) {
    this.#sketch.put(point);
    this.say(`Put at ${point.map(mm => this.yard.lengthText(mm)).join(', ')}.`);
  }

  #done() {
    if (!this.#sketch.done()) this.say(`${this.#sketch.least - this.#sketch.points.length} more wanted before it is done.`);
  }

  #end() {
    this.#sketch = null;
    this.hidden = true;
    this.replaceChildren();
  }
}

customElements.define('draw-bar', DrawBar);
