import { fileName } from '../state/sheets.js';
import { h } from './make.js';

/**
 * A link that takes a sheet along. A sheet of what is not saved yet would be an old one, and says so instead.
 *
 * @param {import('./make.js').GardenElement} element with its garden
 * @param {object} api see api.js
 * @param {string} name the file, `plan.svg`
 * @param {string} [file] what it is called where it is put, where `name` says more than that
 */
export const sheetLink = (element, api, name, text, file = name) => link(element, api, name, text, file, { 'data-key': name }, () => api.needsToken());

/**
 * The same for a sheet that the garden may have too little for: it is fetched first, and what is missing is said.
 *
 * @param {string} name address and what is asked of it, `plan.pdf?paper=A2`
 * @param {string} file what it is called where it is put
 * @param {string} [told] the link's name where `text` says too little by itself
 */
export const bringingLink = (element, api, name, text, file, told) => link(element, api, name, text, file, { 'data-key': `sheet ${file}`, 'aria-label': told ?? null }, () => true);

function link(element, api, name, text, file, props, fetchedFirst) {
  const { garden } = element;
  return h('a', {
    href: api.address(garden.id, name), download: fileName(garden.plan, garden.keeper.revision, file), 'aria-disabled': whyNot(garden) ? 'true' : null, ...props,
    onclick: event => {
      if (!whyNot(garden) && !fetchedFirst()) return;
      event.preventDefault();
      if (whyNot(garden)) element.say(whyNot(garden));
      else bring(element, api, name, file);
    },
  }, text);
}

/** Sheets are made of what is saved. @returns {string | null} why there is none now */
function whyNot({ trying, keeper }) {
  if (trying) return 'Sheets show what is saved. Keep what you try, or let it go, first.';
  return keeper.standing === 'kept' ? null : 'Not saved yet: the sheet would be an old one. Wait for “Saved”.';
}

async function bring(element, api, name, file) {
  try {
    const address = URL.createObjectURL(await api.sheet(element.garden.id, name));
    h('a', { href: address, download: fileName(element.garden.plan, element.garden.keeper.revision, file) }).click();
    setTimeout(() => URL.revokeObjectURL(address), 10000);
  } catch (problem) {
    element.say(`${file} could not be fetched: ${problem.message}`);
  }
}
