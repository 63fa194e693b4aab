import { api } from '../api.js';
import { base64 } from '../state/base64.js';
import { addSnag, dropSnag, setSnag, snagsOf } from '../state/hand-over.js';
import { bedsOf } from '../state/plan.js';
import { drawnSmaller, jpegOf } from './pictures.js';
import { form, GardenElement, h } from './make.js';

/** A photo is made no larger than this, pixels and bytes: a garden keeps sixty of them. */
const MOST_PX = 1280;
const MOST_BYTES = 250000;

/** snag-list: what was found on the walk round, with photos that are kept with the garden. */
export class SnagList extends GardenElement {
  #shown = new Map();

  follows = ['plans'];

  attached() {
    this.atEnd(() => { for (const address of this.#shown.values()) if (address) URL.revokeObjectURL(address); this.#shown.clear(); });
    super.attached();
  }

  render() {
    const { plan } = this.garden;
    this.rebuild(
      h('h3', {}, 'Snag list'),
      h('ol.snags', {}, snagsOf(plan).map((snag, i) => this.#one(snag, i))),
      form('form.new', { 'data-key': 'snag form' }, () => this.#add(),
        h('label', { for: 'snag-text' }, 'Found'),
        h('input', { id: 'snag-text', maxlength: 500, autocomplete: 'off', required: true, 'data-key': 'snag text' }),
        h('label', { for: 'snag-bed' }, 'at'),
        h('select', { id: 'snag-bed', 'data-key': 'snag bed' }, h('option', { value: '' }, 'no bed'), bedsOf(plan).map(({ id }) => h('option', { value: id }, `bed ${id}`))),
        h('button', { type: 'submit', 'data-key': 'snag add' }, 'Add')),
      this.wrong(),
      h('p.hint', {}, 'A photo is kept with the garden as a picture alone: place, time and maker of the camera are taken out.'));
  }

  #one(snag, i) {
    const run = command => this.garden.plans.run(command);
    const photos = snag.photos ?? [];
    return h('li', { 'data-key': `snag ${i}` },
      h('label.wall', {}, h('input', { type: 'checkbox', 'data-key': `snag ${i} mended`, checked: Boolean(snag.mended), onchange: event => run(setSnag(i, { mended: event.target.checked ? today() : undefined })) }),
        ` ${snag.bed ? `Bed ${snag.bed}: ` : ''}${snag.text}`),
      h('span.hint', {}, snag.mended ? `mended ${snag.mended}` : snag.found ? `found ${snag.found}` : ''),
      h('div.photos', {}, photos.map((id, k) => h('figure', { 'data-key': `photo ${id}` }, this.#picture(id, `Photo ${k + 1}: ${snag.text}`),
        h('button.quiet', { type: 'button', 'data-key': `photo drop ${id}`, 'aria-label': `Delete photo ${k + 1} of “${snag.text}”`, onclick: () => this.#dropPhoto(snag, i, id) }, 'Delete photo')))),
      photos.length < 6 ? h('label.photo', {}, 'Add a photo ', h('input', { type: 'file', accept: 'image/jpeg,image/png', capture: 'environment', 'data-key': `snag ${i} photo`, onchange: event => this.#addPhoto(i, event.target) })) : null,
      h('button.quiet', { type: 'button', 'data-key': `snag ${i} delete`, 'aria-label': `Delete snag “${snag.text}”`, onclick: () => run(dropSnag(i)) }, 'Delete snag'));
  }

  #picture(id, alt) {
    if (!this.#shown.has(id)) this.#bring(id);
    const address = this.#shown.get(id);
    return address ? h('img', { src: address, alt }) : h('span.hint', {}, address === null ? 'the photo cannot be shown' : 'photo …');
  }

  async #bring(id) {
    this.#shown.set(id, '');
    try {
      this.#shown.set(id, URL.createObjectURL(await api.photo(this.garden.id, id)));
    } catch {
      this.#shown.set(id, null);
    }
    if (this.isConnected) this.render();
  }

  #add() {
    const [text, bed] = [this.querySelector('#snag-text'), this.querySelector('#snag-bed')];
    if (!text.value.trim()) return;
    this.garden.plans.run(addSnag({ ...(bed.value ? { bed: bed.value } : {}), text: text.value.trim(), found: today() }));
    this.say(`${text.value.trim()} is on the snag list.`);
    text.value = '';
  }

  /** Drawn anew and smaller, the right way up; what the camera wrote beside it stays behind, and the server takes out what is left. */
  async #addPhoto(i, input) {
    const [file] = input.files;
    if (!file) return;
    await this.try(`${file.name} is not kept`, async () => {
      const { id } = await api.addPhoto(this.garden.id, await base64(await jpegOf(await drawnSmaller(file, MOST_PX), MOST_BYTES)));
      const snag = snagsOf(this.garden.plan)[i];
      this.garden.plans.run(setSnag(i, { photos: [...(snag.photos ?? []).filter(one => one !== id), id] }));
      this.say('The photo is kept with the garden.');
    });
    input.value = '';
  }

  /** Off the list at once, as undo brings it back; off the store never by this, as older revisions show it. */
  #dropPhoto(snag, i, id) { this.garden.plans.run(setSnag(i, { photos: snag.photos.filter(one => one !== id) })); }
}

const today = () => {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60000).toISOString().slice(0, 10);
};

customElements.define('snag-list', SnagList);
