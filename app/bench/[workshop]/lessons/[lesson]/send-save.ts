/** Sends a save and reads the answer; every way in which it can end has a name. */
import { z } from 'zod';
import type { Draft } from '#lib/lesson/change.ts';
import { content } from '#lib/lesson/content.ts';
import type { Sending } from '#lib/lesson/pending.ts';
import { cue } from '#lib/transcript/cue.ts';

const versionedDraft = z.object({ version: z.int(), content, cues: z.array(cue) });
/** A draft as the server has it, with its version. */
export interface ServerDraft extends Draft {
  readonly version: number;
}

const pastSave = z.object({
  version: z.int(),
  keys: z.array(z.string()),
  /** Name of the person who saved. */
  by: z.string(),
  /** Whether that is the person who asks: another window of theirs. */
  own: z.boolean(),
  at: z.iso.datetime(),
});
export type OtherSave = Readonly<z.infer<typeof pastSave>>;

const newerFault = z.object({
  fault: z.object({
    code: z.literal('draft-is-newer'),
    newer: versionedDraft,
    saves: z.array(pastSave),
  }),
});
const anyFault = z.object({
  fault: z.object({
    code: z.string(),
    faults: z.array(z.object({ where: z.string(), message: z.string() })).optional(),
    fields: z.array(z.string()).optional(),
  }),
});

/** Why a save will not be taken, however often it is sent. */
export interface Refused {
  readonly code: string;
  readonly faults: readonly { readonly where: string; readonly message: string }[];
}

export type SaveAnswer =
  | { readonly kind: 'saved'; readonly version: number }
  | { readonly kind: 'newer'; readonly newer: ServerDraft; readonly saves: readonly OtherSave[] }
  | { readonly kind: 'refused'; readonly why: Refused }
  /** Nobody is signed in any more. */
  | { readonly kind: 'signed-out' }
  /** No answer, or one that may differ next time. */
  | { readonly kind: 'not-reached' };

// Browsers let requests that outlive the page carry 64 KiB in all (Fetch standard, "keepalive").
const LARGEST_KEEPALIVE = 60_000;

/** Sends changes on a version; never throws. */
export async function sendSave(address: string, baseVersion: number, sending: Sending): Promise<SaveAnswer> {
  const body = new Blob([JSON.stringify({ ...sending, baseVersion })]);
  try {
    const response = await fetch(address, {
      method: 'PATCH',
      headers: { 'content-type': 'application/json' },
      body,
      keepalive: body.size < LARGEST_KEEPALIVE,
    });
    return await readAnswer(response);
  } catch {
    return { kind: 'not-reached' };
  }
}

/** The draft as it stands on the server; null where it could not be read. */
export async function fetchDraft(
  address: string,
): Promise<
  { readonly ok: true; readonly value: ServerDraft } | { readonly ok: false; readonly status: number }
> {
  try {
    const response = await fetch(address, { cache: 'no-store' });
    if (!response.ok) return { ok: false, status: response.status };
    return { ok: true, value: versionedDraft.parse(await response.json()) };
  } catch {
    return { ok: false, status: 0 };
  }
}

async function readAnswer(response: Response): Promise<SaveAnswer> {
  if (response.status === 401) return { kind: 'signed-out' };
  if (response.status >= 500 || response.status === 429 || response.status === 408) {
    return { kind: 'not-reached' };
  }
  const body: unknown = await response.json();
  if (response.ok) return { kind: 'saved', version: z.object({ version: z.int() }).parse(body).version };
  const newer = newerFault.safeParse(body);
  if (newer.success) return { kind: 'newer', ...newer.data.fault };
  const { fault } = anyFault.parse(body);
  const fields = (fault.fields ?? []).map((where) => ({ where, message: '' }));
  return { kind: 'refused', why: { code: fault.code, faults: [...(fault.faults ?? []), ...fields] } };
}
