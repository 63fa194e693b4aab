import { base64 } from '../../main/resources/META-INF/resources/state/base64.js';
import { equal, test } from '../trial.js';

test('bytes become text as RFC 4648 has them, also where they are many', async () => {
  equal(await base64(new Blob(['foobar'])), 'Zm9vYmFy'); // RFC 4648, section 10
  const many = new Uint8Array(40000).map((_, i) => i * 7);
  equal(Uint8Array.from(atob(await base64(new Blob([many]))), letter => letter.charCodeAt(0)), many);
});
