'use client';
/** A stored weave as the beginning of a ring sequence: choose it, say which ring kind goes where, take it. */
import { useState } from 'react';
import { startFromWeave } from '#lib/lesson/start-from-weave.ts';
import { sizesOf } from '#lib/rings/ring.ts';
import { ringsAdded } from '#lib/weave/sequence.ts';
import { findWeave, WEAVES, type Weave } from '#lib/weave/weave-library.ts';
import { useDraft } from '../draft.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import fieldStyles from './fields/fields.module.css';
import styles from './making.module.css';
import { useOpened } from './use-opened.ts';

export function StartFromWeave() {
  const { content, change, mayEdit } = useDraft();
  const [chosen, setChosen] = useState('');
  const [cast, setCast] = useState<Readonly<Record<string, string>>>({});
  const [taken, setTaken] = useState('');
  const weave = findWeave(chosen);
  const placed = content.start.length + content.repeat.length + content.finishing.length;
  const opened = useOpened(placed === 0 && content.ringKinds.length > 0);
  if (!mayEdit) return null;
  const castOf = (role: string): string => {
    const chosenKind = content.ringKinds.find(({ id }) => id === cast[role]);
    return chosenKind?.id ?? likelyKind(weave, role, content.ringKinds);
  };
  const take = (from: Weave) => {
    const whole = Object.fromEntries(from.roles.map(({ id }) => [id, castOf(id)]));
    change(
      startFromWeave(content, from, whole, () => crypto.randomUUID()),
      `start from ${from.name}`,
    );
    setTaken(`${from.name} is taken: read its placements below, and change what you do otherwise.`);
  };
  return (
    <details className={styles.more} {...opened}>
      <summary>Start from a weave</summary>
      <p className="soft">
        A weave as it is commonly made
        {content.ringKinds.length > 0 && ', or begin with a placement of your own below'}. Each placement can
        be changed afterwards.
      </p>
      <div className={fieldStyles.grid}>
        <ChoiceField<string>
          label="Weave"
          value={chosen}
          choices={[['', 'choose one'] as const, ...WEAVES.map(({ id, name }) => [id, name] as const)]}
          onTake={(id) => {
            setChosen(id);
            setTaken('');
          }}
        />
        {weave &&
          content.ringKinds.length > 0 &&
          weave.roles.map(({ id, name }) => (
            <ChoiceField<string>
              key={id}
              label={name === 'ring' ? 'Its rings' : `Its ${name} rings`}
              value={castOf(id)}
              choices={content.ringKinds.map((kind, at) => [kind.id, kind.name || `ring kind ${at + 1}`])}
              onTake={(kind) => setCast({ ...cast, [id]: kind })}
            />
          ))}
      </div>
      {weave && (
        <>
          <p>
            {weave.about}
            {weave.otherNames !== '' && <> Also called {weave.otherNames}.</>}
            {weave.hasHand && <> It has a left and a right hand.</>} <WeaveCounts weave={weave} />
          </p>
          {weave.doubt !== '' && <p className="notice caution">{weave.doubt}</p>}
          {content.ringKinds.length === 0 ? (
            <p className="notice">
              Describe {weave.roles.length === 1 ? 'its ring' : 'its rings'} above first, under Ring kinds.
            </p>
          ) : (
            <div className="row">
              <button type="button" onClick={() => take(weave)}>
                Start from {weave.name}
              </button>
              {placed > 0 && (
                <span className="soft">
                  It takes the place of the {placed} placements that are there; undo brings them back.
                </span>
              )}
            </div>
          )}
        </>
      )}
      <p role="status">{taken}</p>
    </details>
  );
}

function WeaveCounts({ weave }: { weave: Weave }) {
  const [start, repeat, finishing] = (['start', 'repeat', 'finishing'] as const).map((part) =>
    weave.piece[part].reduce((sum, placement) => sum + ringsAdded(placement), 0),
  );
  return (
    <>
      {start} rings in the start, {repeat} in each repeat
      {finishing ? `, ${finishing} in the finishing` : ''}.
    </>
  );
}

/** The largest ring for `large`, the smallest for `small`, else one kind a role as they come. */
function likelyKind(
  weave: Weave | null,
  role: string,
  kinds: ReturnType<typeof useDraft>['content']['ringKinds'],
): string {
  const bySize = kinds.toSorted((a, b) => sizesOf(b).innerMm - sizesOf(a).innerMm);
  if (role === 'large') return bySize[0]?.id ?? '';
  // The first of the smallest: further ones are mostly other colours of it.
  if (role === 'small')
    return bySize.find((kind) => sizesOf(kind).innerMm === sizesOf(bySize.at(-1) ?? kind).innerMm)?.id ?? '';
  const at = weave?.roles.findIndex(({ id }) => id === role) ?? 0;
  return (kinds[at] ?? kinds[0])?.id ?? '';
}
