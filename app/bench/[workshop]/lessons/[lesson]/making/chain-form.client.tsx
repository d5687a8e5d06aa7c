'use client';
/** What geometry says of the length, where the sequence is a plain chain: offered, never taken by itself. */
import { figure } from '#app/words/ring-words.ts';
import { closedFormOf } from '#lib/kit/chain-length.ts';
import type { Sample } from '#lib/kit/making.ts';
import { useDraft } from '../draft.client.tsx';

export function ChainForm({ onTake }: { onTake: (part: Partial<Sample>) => void }) {
  const { content, mayEdit } = useDraft();
  const { sample } = content;
  if (content.repeat.length === 0) return null;
  const form = closedFormOf(content, content.ringKinds);
  if (!form) return null;
  const taken = sample?.perRepeatMm === form.perRepeatMm && sample.endsMm === form.endsMm;
  return (
    <div className="notice">
      <p>
        Ring by ring this is a chain of {form.stacks.join('-')}: for rigid round rings, pulled taut, geometry
        gives <strong>{figure(form.perRepeatMm, 4)} mm a repeat</strong>, and the ends add{' '}
        {figure(form.endsMm, 4)} mm.{' '}
        {form.isExact
          ? 'For single rings this is exact.'
          : 'For stacks it is close (pairs within 0.2 %, threes within 3 % where they are tight); real stacks splay a little and measure longer.'}{' '}
        {taken ? 'This is what the sample says.' : ''}
      </p>
      {mayEdit && !taken && (
        <p>
          <button
            type="button"
            className="quiet"
            onClick={() =>
              onTake({
                perRepeatMm: form.perRepeatMm,
                endsMm: form.endsMm,
                measured: 'pulled taut',
                pieces: [],
              })
            }
          >
            Take this into the sample
          </button>
        </p>
      )}
    </div>
  );
}
