/** A recording that is sent in small pieces and gone on with after every break, as tus 1.0 asks. */
import { expect } from 'vitest';
import type { SignedIn } from '#tests/support/signed-in.ts';
import { answerTo } from './persistent-client.ts';

const PIECE_BYTES = 40_000;
const base64 = (text: string): string => Buffer.from(text).toString('base64');

interface Shown {
  readonly id: string;
  readonly state: string;
  readonly fault: unknown;
}

export class Uploading {
  readonly ids: string[] = [];
  readonly #owner: SignedIn;
  readonly #address: string;
  readonly #clip: Uint8Array<ArrayBuffer>;

  constructor(owner: SignedIn, address: string, clip: Uint8Array<ArrayBuffer>) {
    this.#owner = owner;
    this.#address = address;
    this.#clip = clip;
  }

  /** Sends the clip once, whatever happens meanwhile. */
  async sendOnce(): Promise<void> {
    const metadata = `workshop ${base64(this.#owner.workshop)},lesson ${base64(this.#owner.lessonId)},filename ${base64('clip.mp4')}`;
    const created = await this.#tus('POST', `${this.#address}/api/uploads`, {
      'upload-length': String(this.#clip.length),
      'upload-metadata': metadata,
    });
    expect(created.status, created.body).toBe(201);
    const address = new URL(created.headers.get('location') ?? '', this.#address).href;
    this.ids.push(address.split('/').at(-1) ?? '');

    let acknowledged = 0;
    while (acknowledged < this.#clip.length) {
      const known = await this.#tus('HEAD', address);
      expect(known.status).toBe(200);
      const offset = Number(known.headers.get('upload-offset'));
      // Bytes that were acknowledged are there after any kill.
      expect(offset).toBeGreaterThanOrEqual(acknowledged);
      acknowledged = offset;
      if (offset === this.#clip.length) return;
      const piece = this.#clip.slice(offset, offset + PIECE_BYTES);
      // One try only: after a break the place to go on from must be asked first.
      const sent = await this.#send('PATCH', address, { 'upload-offset': String(offset) }, piece).catch(
        () => null,
      );
      await sent?.arrayBuffer().catch(() => null);
      if (sent?.status === 204) acknowledged = Number(sent.headers.get('upload-offset'));
    }
  }

  /** The recordings that are not ready yet; a refused one is a failure at once. */
  async waiting(): Promise<readonly Shown[]> {
    const answer = await answerTo(() => this.#send('GET', `${this.#owner.api}/recordings`, {}));
    const { recordings } = JSON.parse(answer.body) as { recordings: readonly Shown[] };
    const own = recordings.filter(({ id }) => this.ids.includes(id));
    expect(own.length).toBe(Math.min(this.ids.length, 100));
    for (const { state, fault } of own) expect(state, JSON.stringify(fault)).not.toBe('refused');
    return own.filter(({ state }) => state !== 'ready');
  }

  /** Every ready recording plays from its first to its last byte. */
  async checkMedia(): Promise<void> {
    for (const id of this.ids) {
      const answer = await this.#send('GET', `${this.#owner.api}/recordings/${id}/media`, {});
      expect(answer.status).toBe(200);
      expect((await answer.arrayBuffer()).byteLength).toBeGreaterThan(1_000);
    }
  }

  #tus(method: string, address: string, headers: Record<string, string> = {}) {
    return answerTo(() => this.#send(method, address, headers));
  }

  #send(
    method: string,
    address: string,
    headers: Record<string, string>,
    body?: Uint8Array<ArrayBuffer>,
  ): Promise<Response> {
    return fetch(address, {
      method,
      headers: {
        cookie: this.#owner.cookie,
        origin: this.#address,
        'tus-resumable': '1.0.0',
        ...(body ? { 'content-type': 'application/offset+octet-stream' } : {}),
        ...headers,
      },
      ...(body ? { body } : {}),
    });
  }
}
