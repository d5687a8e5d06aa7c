/**
 * A teacher who publishes without pause. Before revision n she sets the title
 * to `Edition n` and adds cue n: so revision n is whole exactly if its captions
 * are the cues 1 to n.
 */
import { randomUUID } from 'node:crypto';
import { expect } from 'vitest';
import type { SignedIn } from '#tests/support/signed-in.ts';
import { answerTo } from './persistent-client.ts';

/** The lesson has no recording here: a step is enough to teach something. */
const STEP = { id: 'step-1', sentence: 'Open a ring.', atMs: null };

export class Publishing {
  /** Revisions whose publication was acknowledged. */
  acknowledged = 0;
  #version = 1;
  readonly #owner: SignedIn;
  readonly #address: string;

  constructor(owner: SignedIn, address: string) {
    this.#owner = owner;
    this.#address = address;
  }

  /** Saves the next edition and publishes it, asking with the same ids until there is an answer. */
  async publishOnce(): Promise<void> {
    const number = this.acknowledged + 1;
    const cue = {
      id: `cue-${number}`,
      startMs: number * 10,
      endMs: number * 10 + 5,
      text: `Edition ${number}`,
      settings: '',
    };
    const saved = await this.#post('draft', 'PATCH', {
      saveId: randomUUID(),
      baseVersion: this.#version,
      changes: [
        { kind: 'set', field: 'title', value: `Edition ${number}` },
        { kind: 'put', list: 'steps', item: STEP },
        { kind: 'cues', put: [cue], remove: [] },
      ],
    });
    expect(saved.status, saved.body.slice(0, 500)).toBe(200);
    this.#version = (JSON.parse(saved.body) as { version: number }).version;
    const published = await this.#post('revisions', 'POST', {
      requestId: randomUUID(),
      version: this.#version,
    });
    expect(published.status, published.body.slice(0, 500)).toBeLessThan(300);
    const answer = JSON.parse(published.body) as { number: number; version: number };
    expect(answer.number).toBe(number);
    this.#version = answer.version;
    this.acknowledged = number;
  }

  /** As a pupil sees it: every acknowledged revision is there and whole, the newest one too. */
  async check(): Promise<void> {
    const number = this.acknowledged;
    if (number === 0) return;
    for (const each of new Set([1, Math.ceil(number / 2), number])) {
      const answer = await answerTo(() => fetch(`${this.#lessonPage}/revision/${each}/captions.vtt`));
      expect(answer.status, `revision ${each}`).toBe(200);
      const told = answer.body.match(/^Edition \d+$/gm) ?? [];
      expect(told).toEqual(Array.from({ length: each }, (_, index) => `Edition ${index + 1}`));
    }
    const page = await answerTo(() => fetch(this.#lessonPage));
    const shown = Number(/Edition (\d+)/.exec(page.body)?.[1]);
    // The next one may have been published meanwhile; an older one may not come back.
    expect(shown).toBeGreaterThanOrEqual(number);
  }

  get #lessonPage(): string {
    return `${this.#address}/workshop/${this.#owner.workshop}/lesson/l-${this.#owner.lessonId}`;
  }

  #post(path: string, method: string, body: unknown) {
    return answerTo(() =>
      fetch(`${this.#owner.api}/${path}`, {
        method,
        body: JSON.stringify(body),
        headers: { cookie: this.#owner.cookie, origin: this.#address, 'content-type': 'application/json' },
      }),
    );
  }
}
