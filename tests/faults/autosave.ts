/**
 * A teacher who types without pause: each save sets the title to its number
 * and adds a cue with that number. So a draft that was saved n times has title
 * n and exactly the cues 1 to n: anything else is a loss or a half state.
 */
import { randomUUID } from 'node:crypto';
import { expect } from 'vitest';
import type { SignedIn } from '#tests/support/signed-in.ts';
import { answerTo } from './persistent-client.ts';

interface Draft {
  readonly version: number;
  readonly content: { readonly title: string };
  readonly cues: readonly { readonly id: string }[];
}

export class Autosave {
  /** Saves that were acknowledged. */
  acknowledged = 0;
  version = 1;
  readonly #owner: SignedIn;
  readonly #address: string;

  constructor(owner: SignedIn, address: string) {
    this.#owner = owner;
    this.#address = address;
  }

  /** Saves once more, with the same id until there is an answer. */
  async saveOnce(): Promise<void> {
    const number = this.acknowledged + 1;
    const cue = {
      id: `cue-${number}`,
      startMs: number * 10,
      endMs: number * 10 + 5,
      text: `Save ${number}`,
      settings: '',
    };
    const body = JSON.stringify({
      saveId: randomUUID(),
      baseVersion: this.version,
      changes: [
        { kind: 'set', field: 'title', value: `Saved ${number}` },
        { kind: 'cues', put: [cue], remove: [] },
      ],
    });
    const answer = await answerTo(() =>
      fetch(`${this.#owner.api}/draft`, { method: 'PATCH', body, headers: this.#headers() }),
    );
    // Nobody else saves: a refusal would mean that a save was made twice, or lost.
    expect(answer.status, answer.body.slice(0, 500)).toBe(200);
    this.version = (JSON.parse(answer.body) as { version: number }).version;
    this.acknowledged = number;
  }

  /** Reads the draft as another window would, and finds exactly what was acknowledged. */
  async check(): Promise<void> {
    const answer = await answerTo(() => fetch(`${this.#owner.api}/draft`, { headers: this.#headers() }));
    expect(answer.status).toBe(200);
    const draft = JSON.parse(answer.body) as Draft;
    expect(draft.version).toBe(this.version);
    if (this.acknowledged > 0) expect(draft.content.title).toBe(`Saved ${this.acknowledged}`);
    expect(draft.cues.map(({ id }) => id)).toEqual(
      Array.from({ length: this.acknowledged }, (_, index) => `cue-${index + 1}`),
    );
  }

  #headers(): Record<string, string> {
    return { cookie: this.#owner.cookie, origin: this.#address, 'content-type': 'application/json' };
  }
}
