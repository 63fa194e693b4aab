import { base64 } from '../state/base64.js';
import { readNumber } from '../state/checks.js';
import { dropPicture, layPicture, movePicture, pictureOf, scalePicture, setPicture } from '../state/site-picture.js';
import { drawnSmaller } from './pictures.js';
import { unitsOf } from '../state/plan.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { GardenElement, h } from './make.js';

/** A picture is made no larger than this, pixels, and as small as the document wants it, characters. */
const MOST_PX = 1600;
const MOST_TEXT = 1300000;

/** The longest PDF that the server takes, bytes. */
const MOST_PDF = 3600000;

/** site-picture: a picture of the site under the yard. Set `yard`. */
export class SitePicture extends GardenElement {
  #between = null;

  follows = ['plans'];

  render() {
    const { plan } = this.garden;
    const picture = pictureOf(plan);
    const run = command => this.run(command);
    this.rebuild(
      h('label', {}, picture ? 'Another picture (PNG, JPEG or PDF) ' : 'A site plan or photo from above (PNG, JPEG or the first page of a PDF) ',
        h('input', { type: 'file', accept: 'image/png,image/jpeg,application/pdf', 'data-key': 'picture file', onchange: event => this.#file(event.target) })),
      this.wrong(),
      picture ? [
        h('div.verbs', {},
          h('button', { type: 'button', 'data-key': 'picture scale', onclick: () => this.#twoPoints() }, 'Scale by two points'),
          h('button', { type: 'button', 'data-key': 'picture move', onclick: () => this.#move() }, 'Move'),
          h('button', { type: 'button', 'data-key': 'picture hide', 'aria-pressed': String(Boolean(picture.hidden)), onclick: () => run(setPicture({ hidden: !picture.hidden })) }, 'Hide'),
          h('button', { type: 'button', 'data-key': 'picture delete', onclick: () => run(dropPicture) }, 'Delete')),
        this.#between ? lengthField({ label: 'How far apart the two points are', units: unitsOf(plan), key: 'picture distance', check: mm => (mm > 0 ? null : 'Write 1 or more.'),
          onlength: ({ detail }) => { run(scalePicture(...this.#between, detail.mm)); this.#between = null; this.say('The picture is scaled.'); this.render(); } }) : null,
        h('div.fields', {},
          countField({ label: 'Turned, degrees', mode: 'decimal', key: 'picture turn', value: picture.turn ?? 0, read: readNumber(-360, 360, true), oncount: ({ detail }) => run(setPicture({ turn: detail })) }),
          h('div.field', {}, h('label', { for: 'picture-faint' }, 'How strong'),
            h('input', { id: 'picture-faint', type: 'range', min: 0.1, max: 1, step: 0.05, value: picture.faint ?? 0.5, 'data-key': 'picture faint', onchange: event => run(setPicture({ faint: Number(event.target.value) })) })))] : null);
  }

  async #twoPoints() {
    const points = await this.yard.draw({ as: 'line', name: 'Two points whose distance you know' });
    if (!points) return;
    this.#between = [points[0], points.at(-1)];
    this.render();
    this.querySelector('[data-key="picture distance"]')?.focus();
  }

  async #move() {
    const points = await this.yard.draw({ as: 'line', name: 'From a point of the picture to where it belongs' });
    if (points) this.run(movePicture(points.at(-1)[0] - points[0][0], points.at(-1)[1] - points[0][1]));
  }

  /** The server paints the first page of a PDF. */
  async #pictured(file) {
    if (file.type !== 'application/pdf') return file;
    if (file.size > MOST_PDF) throw new Error(`it has ${Math.ceil(file.size / 1e5) / 10} MB; ${MOST_PDF / 1e6} MB is the most: save the page with the plan as a PDF of its own`);
    return this.garden.api.sitePlan(await base64(file));
  }

  async #file(input) {
    const [file] = input.files;
    if (!file) return;
    this.problem = null;
    try {
      const canvas = await drawnSmaller(await this.#pictured(file), MOST_PX);
      const data = [0.8, 0.6, 0.4, 0.25].map(quality => () => canvas.toDataURL('image/jpeg', quality)).reduce((best, make) => (best.length <= MOST_TEXT ? best : make()), ' '.repeat(MOST_TEXT + 1));
      if (data.length > MOST_TEXT) throw new Error('it is too large');
      this.run(layPicture(data, canvas.width, canvas.height));
      this.say('The picture lies under the yard. Scale it by two points.');
    } catch (problem) {
      this.problem = problem.snags?.length ? `${file.name} is not taken. ${problem.message}` : `${file.name} is not taken: ${problem.message.replace(/\.$/, '')}. Choose a PNG or JPEG picture, or a PDF.`;
    }
    if (this.isConnected) this.render();
  }
}

customElements.define('site-picture', SitePicture);
