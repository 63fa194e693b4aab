import { h } from './make.js';

/**
 * A link that takes a sheet along. A sheet of what is not saved yet would be an old one, and says so instead.
 *
 * @param {import('./make.js').GardenElement} element with its garden
 * @param {object} api see api.js
 * @param {string} name the file, `plan.svg`
 */
export function sheetLink(element, api, name, text) {
  const { garden } = element;
  const behind = garden.keeper.standing !== 'kept';
  return h('a', {
    href: api.address(garden.id, name), download: name, 'data-key': name, 'aria-disabled': behind ? 'true' : null,
    onclick: event => {
      if (garden.keeper.standing !== 'kept') {
        event.preventDefault();
        element.say('Not saved yet: the sheet would be an old one. Wait for “Saved”.');
      } else if (api.needsToken()) {
        event.preventDefault();
        bring(element, api, name);
      }
    },
  }, text);
}

async function bring(element, api, name) {
  try {
    const address = URL.createObjectURL(await api.sheet(element.garden.id, name));
    h('a', { href: address, download: name }).click();
    setTimeout(() => URL.revokeObjectURL(address), 10000);
  } catch (problem) {
    element.say(`${name} does not come: ${problem.message}`);
  }
}
