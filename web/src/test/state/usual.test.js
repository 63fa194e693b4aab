import { CREW_LISTS, CREW_OBJECTS } from '../../main/resources/META-INF/resources/state/crew-forms.js';
import { LISTS, OBJECTS } from '../../main/resources/META-INF/resources/state/ground-forms.js';
import { FIELDS } from '../../main/resources/META-INF/resources/state/build.js';
import { equal, test } from '../trial.js';

const schema = await (await fetch('/test/schema.json')).json();

const followed = node => (node?.$ref ? { ...node.$ref.slice(2).split('/').reduce((at, key) => at[key], schema), ...node } : node);

const fieldAt = path => path.reduce((node, key) => {
  const own = followed(node);
  return followed(own?.properties?.[key] ?? own?.items?.properties?.[key] ?? followed(own?.items)?.properties?.[key]);
}, schema);

const WORDS = { yes: true, no: false, true: true, false: false };

const told = value => JSON.stringify(WORDS[value] ?? value);

test('what the page calls usual is what the server takes, and so are the bounds', () => {
  const forms = [CREW_LISTS, CREW_OBJECTS, LISTS, OBJECTS].flatMap(Object.values).flatMap(({ path, fields }) => (path ? fields.map(field => ({ ...field, path: [...path, ...field.key] })) : []));
  const build = FIELDS.map(({ key, sub, from = [], ...field }) => ({ ...field, path: ['beds', key, ...(sub ? [sub] : [])], least: from[0], most: from[1] }));
  let compared = 0;
  // what the page leaves out as "none" is not what the server takes where it is there
  for (const { path, usual, least, most, whole } of [...forms, ...build]) {
    const field = fieldAt(path);
    for (const [own, theirs] of [[whole ? undefined : usual, field?.default], [least, field?.minimum], [most, field?.maximum]]) {
      if (own === undefined || theirs === undefined) continue;
      compared++;
      equal(told(own), told(theirs), path.join('.'));
    }
  }
  equal(compared > 100, true, `${compared} compared`);
});
