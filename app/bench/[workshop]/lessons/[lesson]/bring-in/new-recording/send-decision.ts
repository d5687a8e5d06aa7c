/** Sends a decision about a new recording. */
import type { RecordingDecision } from '#lib/bench/decide-recording.ts';
import type { EditList } from '#lib/retiming/edit-list.ts';
import type { Cue } from '#lib/transcript/cue.ts';

interface Move {
  readonly saveId: string;
  readonly version: number;
  readonly list: EditList | null;
  readonly wordsStay: readonly number[];
  readonly heard: readonly Cue[];
}

/** @returns null where it was done, else the code of what went wrong. */
export async function sendDecision(
  address: string,
  decided: RecordingDecision['decision'],
  move: Move | null,
): Promise<string | null> {
  const body = decided === 'move' ? { decision: decided, ...move } : { decision: decided };
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (response.ok) return null;
    const answer = (await response.json()) as { fault?: { code?: string } };
    return answer.fault?.code ?? 'no-answer';
  } catch {
    return 'no-answer';
  }
}
