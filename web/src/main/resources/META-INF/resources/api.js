/** The only module that talks to the server. Paths are relative to the page, nothing leaves its origin. */
import { paragraph } from './state/words.js';

const worst = ([snag]) => snag && paragraph(snag);

/** The server answered, and said no: `snags` name place, amount and way out; the message tells the first of them. */
class Refusal extends Error {
  /** @param {number} status @param {object} body problem+json, or {} */
  constructor(status, body) {
    super(worst(body.snags ?? []) || body.detail || body.title || `The server answered ${status}.`);
    this.status = status;
    this.body = body;
    this.snags = Array.isArray(body.snags) ? body.snags : [];
  }
}

/** No answer, or one that says later: `told` is the first clause of what the server says of itself, empty where it is away or the way to it is. */
export class Away extends Error {
  constructor(message, { told = '', ...rest } = {}) {
    super(message, rest);
    this.told = told;
  }
}

const PATIENCE_MS = 60000;

/** A server that others can reach asks for its token; it is kept for this tab and never stands in an address. */
const TOKEN = 'lapyard.token';

const token = () => sessionStorage.getItem(TOKEN);

/** Answers after which the same may be sent again: it came too slowly, the server is busy or not there behind its door, its disk is full. */
const LATER_STATUSES = new Set([408, 502, 503, 504, 507]);

async function ask(method, path, { body, headers = {} } = {}) {
  let answer;
  try {
    answer = await fetch(path, {
      method,
      headers: {
        accept: 'application/json',
        ...(body ? { 'content-type': 'application/json' } : {}),
        ...(token() ? { authorization: `Bearer ${token()}` } : {}),
        ...headers,
      },
      body: body === undefined ? undefined : JSON.stringify(body),
      cache: 'no-cache',
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
  } catch (cause) {
    throw new Away('The server does not answer.', { cause });
  }
  if (LATER_STATUSES.has(answer.status)) {
    const { detail = '' } = await answer.json().catch(() => ({}));
    throw new Away(`The server answered ${answer.status}.`, { told: detail.split(':')[0] });
  }
  if (!answer.ok && answer.status !== 304) throw new Refusal(answer.status, await answer.json().catch(() => ({})));
  return answer;
}

async function read(answer) {
  try {
    return await answer.json();
  } catch (cause) {
    throw new Away('The answer broke off.', { cause });
  }
}

const piece = id => `api/shelf/${encodeURIComponent(id)}`;

/** As a query. @param {{parts?: string[], bed?: string, look?: string}} asked of a job sheet */
const asking = ({ parts, bed, look }, more = {}) => new URLSearchParams({ ...more, ...(parts ? { parts: parts.join() } : {}), ...(bed ? { bed } : {}), ...(look ? { look } : {}) });

const garden = id => `api/gardens/${encodeURIComponent(id)}`;

export const api = {
  /**
   * The first page of a list, see `Gardens`.
   *
   * @param {{find: string, which: string, order: string}} asked
   * @returns {Promise<{gardens: {id: string, name: string, client?: string, state: string, revision: number, changed: string}[], total: number, next?: string}>}
   */
  async gardens({ find, which, order }) {
    const list = ['archived', 'deleted'].includes(which) ? { [which]: 'true' } : which ? { state: which } : {};
    return read(await ask('GET', `api/gardens?${new URLSearchParams({ ...list, ...(find.trim() ? { find } : {}), order })}`));
  },

  /** @param {string} next of the page before */
  async pageAfter(next) { return read(await ask('GET', next.slice(1))); },

  /** Puts a garden away from the list, or back on it. @param {boolean} away */
  async archive(id, away) { await ask(away ? 'PUT' : 'DELETE', `${garden(id)}/archived`); },

  /** @returns {Promise<string>} the new garden's id */
  async create(plan) {
    const answer = await ask('POST', 'api/gardens', { body: plan });
    return madeId(answer);
  },

  /** @returns {Promise<{plan: object, revision: string}>} `revision` is the entity tag */
  async open(id) {
    const answer = await ask('GET', garden(id));
    return { plan: await read(answer), revision: answer.headers.get('etag') };
  },

  /**
   * @param {'job-sheet'|'order'} [also] what is wanted with it
   * @param {{parts?: string[], bed?: string}} [asked] what of the job sheet, see {@link jobSheet}
   * @returns {Promise<{revision: string, sheet: object | null, order: object | null}>} the new revision, and a first look at its job
   *     sheet or order where the server had the time
   */
  async save(id, plan, revision, also = 'job-sheet', asked = {}) {
    const answer = await ask('PUT', `${garden(id)}?${asking({ ...asked, look: 'first' }, { with: also })}`, { body: plan, headers: { 'if-match': revision } });
    const { jobSheet = null, order = null } = await answer.json().catch(() => ({}));
    return { revision: `"${answer.headers.get('etag').replace(/\D/g, '')}"`, sheet: jobSheet, order };
  },

  /** Takes a garden off the list; the store keeps its history. */
  async remove(id, revision) { await ask('DELETE', garden(id), { headers: { 'if-match': revision } }); },

  /** Brings a deleted garden back as it was before. */
  async bringBack(id) {
    const { revision, revisions } = await read(await ask('GET', `${garden(id)}/revisions?limit=50`));
    const last = revisions.find(one => one.kind !== 'deleted');
    await ask('POST', `${garden(id)}/revisions/${last.number}/restore`, { headers: { 'if-match': `"${revision}"` } });
  },

  /**
   * @param {{parts?: string[], bed?: string, look?: string}} [asked] its parts, of the beds this one, all of it unless given; `first` for a
   *     first look, which has `look` where it may still improve
   * @returns {Promise<object>} the job sheet of what is stored
   */
  async jobSheet(id, asked) { return read(await ask('GET', `${garden(id)}/job-sheet${asked ? `?${asking(asked)}` : ''}`)); },

  /** Has the worker keep the whole job sheet, which is not read here. */
  async keepJobSheet(id) { await (await ask('GET', `${garden(id)}/job-sheet`)).body?.cancel(); },

  /** @returns {Promise<object>} the job sheet of a garden that is kept nowhere, as {@link jobSheet} */
  async jobSheetOf(plan, asked) { return read(await ask('POST', `api/job-sheet?${asking(asked)}`, { body: plan })); },

  /** @returns {Promise<object>} a part of it, see {@link part} */
  async partOf(plan, name) { return read(await ask('POST', `api/job-sheet/${name}`, { body: plan })); },

  /** @returns {Promise<object>} a part of the job sheet that is worked out only when asked for: `loads`, `pegs`, `quote`, `sun`, `weekends` */
  async part(id, name) { return read(await ask('GET', `${garden(id)}/job-sheet/${name}`)); },

  /** How a merchant's list in CSV is understood, and `garden` with it where every line is good; nothing is kept. */
  async merchantList(list, supplier, plan) {
    return read(await ask('POST', 'api/merchant-list', { body: { list, supplier, garden: plan } }));
  },

  /** Keeps a photo with a garden. @param {string} photo its bytes in base64 @returns {Promise<{id: string}>} */
  async addPhoto(id, photo) { return read(await ask('POST', `${garden(id)}/photos`, { body: { photo } })); },

  /** @returns {Promise<Blob>} a photo that is kept with a garden */
  async photo(id, photo) { return (await ask('GET', `${garden(id)}/photos/${photo}`, { headers: { accept: 'image/jpeg, image/png' } })).blob(); },

  /** The first sheet of a workbook as CSV. @param {string} workbook its bytes in base64 @returns {Promise<string>} */
  async workbookList(workbook) { return (await read(await ask('POST', 'api/merchant-list', { body: { workbook } }))).list; },

  /** @returns {Promise<{id: string, kind: string, name: string, revision: number, gardens: number}[]>} what is kept once for all gardens */
  async shelf() { return (await read(await ask('GET', 'api/shelf'))).pieces; },

  /** @returns {Promise<{id: string, revision: number, newest?: number, changed?: boolean}[]>} what a garden has of it */
  async shelfOf(id) { return (await read(await ask('GET', `${garden(id)}/shelf`))).pieces; },

  async addPiece(kind, name, content) { return read(await ask('POST', 'api/shelf', { body: { kind, name, content } })); },

  /** A new revision of a piece. @param {number} revision that stands */
  async changePiece(id, name, content, revision) { return read(await ask('PUT', piece(id), { body: { name, content }, headers: { 'if-match': `"${revision}"` } })); },

  async dropPiece(id) { await ask('DELETE', piece(id)); },

  /** What the newest revision of a piece would do to the order of each garden that has it; nothing is changed. */
  async effectOf(id) { return read(await ask('GET', `${piece(id)}/gardens?effect=true`)); },

  /** Takes a piece into a garden. @param {string} revision of the garden, its entity tag */
  async takePiece(id, from, revision, anyway) { await ask('POST', `${garden(id)}/shelf`, { body: { piece: from, anyway }, headers: { 'if-match': revision } }); },

  /** What a DXF, GeoJSON or CSV file of a site holds, and `garden` with what is taken of it; nothing is kept. @param {{file: string, unit?: string, take?: object, garden: object}} asked */
  async siteFile(asked) { return read(await ask('POST', 'api/site-file', { body: asked })); },

  /** @returns {Promise<object>} the catalogue that stands where a garden says nothing, prices examples of ours */
  async examples() { return read(await ask('GET', 'api/example-catalogue')); },

  /** A garden beside a copy with changes, or beside another garden; nothing is kept. @param {{garden: object, changes?: object[], instead?: object}} asked */
  async tryOut(asked) { return read(await ask('POST', 'api/try-out', { body: asked })); },

  /** @param {string} pdf in base64 @returns {Promise<Blob>} its first page as PNG */
  async sitePlan(pdf) { return (await ask('POST', 'api/site-plan', { body: { pdf }, headers: { accept: 'image/png, application/json' } })).blob(); },

  /** Begins a solve that goes on by itself. @returns {Promise<{id: string, state: string, seconds: number, progress: object[]}>} */
  async beginSolve(kind, problem, seconds) {
    return read(await ask('POST', `api/solve/${kind}?seconds=${seconds}`, { body: problem, headers: { prefer: 'respond-async' } }));
  },

  /** How far it is: as {@link beginSolve}, with `result` or `problem` once it has ended. */
  async solve(id) { return read(await ask('GET', `api/solves/${encodeURIComponent(id)}`)); },

  /** Tells it to stop; its best so far is told as its result. */
  async stopSolve(id) { await ask('DELETE', `api/solves/${encodeURIComponent(id)}`); },

  /** @returns {Promise<{plan: object, revision: string} | null>} null where `revision` still stands */
  async newer(id, revision) {
    const answer = await ask('GET', garden(id), { headers: { 'if-none-match': revision } });
    return answer.status === 304 ? null : { plan: await read(answer), revision: answer.headers.get('etag') };
  },

  /**
   * Hears of new revisions until the server or `signal` ends it. Not by EventSource, which cannot carry the token.
   *
   * @param {(revision: number) => void} heard the revision that stands first, then each new one
   */
  async listen(id, heard, signal) {
    const headers = { accept: 'text/event-stream', ...(token() ? { authorization: `Bearer ${token()}` } : {}) };
    const answer = await fetch(`${garden(id)}/events`, { headers, signal, cache: 'no-store' });
    if (!answer.ok) throw new Refusal(answer.status, await answer.json().catch(() => ({})));
    const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
    let text = '';
    for (;;) {
      const { value, done } = await reader.read();
      if (done) return;
      text += value;
      const lines = text.split('\n');
      text = lines.pop();
      for (const line of lines) if (line.startsWith('id: ')) heard(Number(line.slice(4)));
    }
  },

  /** @returns {Promise<{sheets: {name: string, title: string}[], papers: string[], layers: {name: string, usual: boolean}[]}>} */
  async sheets() { return read(await ask('GET', 'api/sheets')); },

  /**
   * A part of the history, newest first.
   *
   * @param {number} [before] only revisions older than this one
   * @returns {Promise<{revisions: {number: number, kind: string, name: string, saved: string, stamp?: string, printed?: boolean}[], next?: string}>}
   */
  async revisions(id, before) { return read(await ask('GET', `${garden(id)}/revisions?limit=50${before ? `&before=${before}` : ''}`)); },

  /** What changed between two revisions. @returns {Promise<{where: string, text: string}[]>} */
  async difference(id, from, to) { return (await read(await ask('GET', `${garden(id)}/difference?from=${from}&to=${to}`))).lines; },

  /** What the change did to the order, line by line. */
  async variation(id, from, to) { return read(await ask('GET', `${garden(id)}/variation?from=${from}&to=${to}`)); },

  /** Gives a revision a name that keeps it for good, or takes it away. @param {string | null} stamp */
  async stamp(id, number, stamp) {
    const path = `${garden(id)}/revisions/${number}/stamp`;
    await (stamp === null ? ask('DELETE', path) : ask('PUT', path, { body: { stamp } }));
  },

  /** Brings an old revision back as the newest. @param {string} revision the entity tag that stands */
  async restore(id, number, revision) { await ask('POST', `${garden(id)}/revisions/${number}/restore`, { headers: { 'if-match': revision } }); },

  /** @returns {Promise<string>} the id of a new garden that begins as this revision */
  async copyOf(id, number) { return madeId(await ask('POST', `${garden(id)}/copy?revision=${number}`)); },

  /** A garden with its history, as it was taken out into a file. @returns {Promise<string>} its new id */
  async bringIn(file) { return madeId(await ask('POST', 'api/gardens/file', { body: JSON.parse(file) })); },

  /** @returns {Promise<{id: string, label: string, made: string, ends: ?string}[]>} who may read this garden without a token of the server */
  async shares(id) { return (await read(await ask('GET', `${garden(id)}/shares`))).shares; },

  /** @param {?string} ends a time, null for no end @returns {Promise<string>} the token, told this once */
  async share(id, label, ends) { return (await read(await ask('POST', `${garden(id)}/shares`, { body: { label, ends } }))).token; },

  async unshare(id, share) { await ask('DELETE', `${garden(id)}/shares/${encodeURIComponent(share)}`); },

  /** Where a drawing or list of a garden is fetched: `plan.svg`, `plan.pdf`, `slip.csv`. */
  address: (id, name) => `${garden(id)}/${name}`,

  /** A drawing or list as bytes, where a link would not carry the token. @returns {Promise<Blob>} */
  async sheet(id, name) { return (await ask('GET', `${garden(id)}/${name}`, { headers: { accept: '*/*' } })).blob(); },

  /** Has the worker keep a sheet, which is not printed yet. */
  async keepSheet(id, name) { await (await ask('GET', `${garden(id)}/${name}`, { headers: { accept: '*/*', prefer: 'ahead' } })).blob(); },

  needsToken: token,

  useToken(text) { sessionStorage.setItem(TOKEN, text); },
};

const madeId = answer => decodeURIComponent(answer.headers.get('location').split('/').filter(Boolean).pop());
