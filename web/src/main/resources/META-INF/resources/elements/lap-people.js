import { api } from '../api.js';
import { USUAL_DAYS, dayAfter, endOf } from '../state/shares.js';
import { form, GardenElement, h } from './make.js';
import { place } from './places.js';

const when = time => new Date(time).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });

/** lap-people: who may read this garden without a token of the server. */
export class LapPeople extends GardenElement {
  #shares = null;
  #told = null;

  attached() {
    this.render();
    this.try('Who may look is not known', async () => { this.#shares = await api.shares(this.garden.id); });
  }

  render() { this.rebuild(this.wrong(), this.#shared()); }

  #shared() {
    return h('section', {},
      h('p.hint', {}, 'Where this server asks for a token, a share is one that reads this garden and changes nothing.'),
      h('p.hint', {}, `It ends after ${USUAL_DAYS} days, longer than most gardens take to build. Choose another date, or empty it for no end.`),
      this.#told ? h('p.token', { role: 'status' }, `For ${this.#told.label}, shown this once: `, h('code', { tabindex: '0' }, this.#told.token)) : null,
      h('ul', {}, (this.#shares ?? []).map(({ id, label, made, ends }) => h('li', {}, `${label}, since ${when(made)}, ${ends ? `until ${when(ends)}` : 'no end'} `,
        h('button.quiet', { type: 'button', 'data-key': `unshare ${id}`, 'aria-label': `Take back the share of ${label}`, onclick: () => this.#unshare(id, label) }, 'Stop sharing')))),
      form('form.share', {}, sent => {
        const [label, until] = sent.querySelectorAll('input');
        if (label.value.trim()) this.#share(label.value.trim(), endOf(until.value), label);
      },
      h('label', { for: 'share-label' }, 'Share with'),
      h('input', { id: 'share-label', maxlength: 100, required: true, autocomplete: 'off', 'data-key': 'share label' }),
      h('label', { for: 'share-until' }, 'Until'),
      h('input', { id: 'share-until', type: 'date', min: dayAfter(new Date(), 0), value: dayAfter(new Date(), USUAL_DAYS), 'data-key': 'share until' }),
      h('button', { type: 'submit', 'data-key': 'share' }, 'Share')));
  }

  async #share(label, ends, input) {
    await this.try('It is not shared', async () => {
      this.#told = { label, token: await api.share(this.garden.id, label, ends) };
      this.#shares = await api.shares(this.garden.id);
      input.value = '';
      this.say(`Shared with ${label}. The token is shown this once.`);
    });
  }

  async #unshare(share, label) {
    await this.try('The share is not taken back', async () => {
      await api.unshare(this.garden.id, share);
      this.#shares = await api.shares(this.garden.id);
      this.#told = null;
      this.say(`${label} is no longer shared with.`);
    });
  }
}

customElements.define('lap-people', LapPeople);
place({ key: 'people', title: 'People', tag: 'lap-people', table: 'share', order: 40 });
