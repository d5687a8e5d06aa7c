'use client';
/** The ring kinds of a lesson, and the form that makes a new one. */
import { useState } from 'react';
import type { RingKind, StatedSize } from '#lib/rings/ring-kind.ts';
import { useDraft } from '../draft.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { SizeField } from './fields/size-field.client.tsx';
import { TextField } from './fields/text-field.client.tsx';
import styles from './making.module.css';
import { RingKindCard } from './ring-kind-card.client.tsx';
import { useList } from './use-list.ts';

export function RingKinds({ lessonId }: { lessonId: string }) {
  const kinds = useList('ringKinds', 'ring kind');
  const { mayEdit } = useDraft();
  const make = (kind: RingKind) => {
    kinds.add(kind);
    requestAnimationFrame(() => document.getElementById(`${kind.id}-colour`)?.focus());
  };
  return (
    <>
      {kinds.items.length === 0 && (
        <p className="soft">
          Every ring that differs in size, wire, metal or colour is a ring kind of its own. A lesson without
          rings needs none.
        </p>
      )}
      <ul className={styles.cards}>
        {kinds.items.map((kind, index) => (
          <RingKindCard key={kind.id} kind={kind} index={index} lessonId={lessonId} kinds={kinds} />
        ))}
      </ul>
      {mayEdit && <NewRingKind key={kinds.items.length} lessonId={lessonId} onMake={make} />}
    </>
  );
}

function NewRingKind({ lessonId, onMake }: { lessonId: string; onMake: (kind: RingKind) => void }) {
  const [name, setName] = useState('');
  const [inner, setInner] = useState<StatedSize | null>(null);
  const [wire, setWire] = useState<StatedSize | null>(null);
  const [missing, setMissing] = useState(false);
  const place = `${lessonId}/new-ring-kind`;
  const make = () => {
    if (!inner || !wire) {
      setMissing(true);
      document.getElementById(inner ? 'new-ring-wire' : 'new-ring-inner')?.focus();
      return;
    }
    onMake({
      id: crypto.randomUUID(),
      name,
      innerDiameter: inner,
      measuredInnerMm: null,
      wire,
      metal: 'copper',
      metalName: '',
      densityGPerCm3: null,
      colour: '',
      colourCode: '#b8643c',
      weighedHundredG: null,
      offer: null,
    });
  };
  return (
    <fieldset className={styles.newThing}>
      <legend>Add a ring kind</legend>
      <div className={fieldStyles.grid}>
        <TextField label="Name" placeholder="large copper" value={name} onTake={setName} />
        <SizeField
          id="new-ring-inner"
          label="Inner diameter"
          of="inner diameter"
          place={`${place}/inner`}
          value={inner}
          onTake={setInner}
        />
        <SizeField
          id="new-ring-wire"
          label="Wire"
          of="wire"
          place={`${place}/wire`}
          value={wire}
          onTake={setWire}
        />
      </div>
      <div className="row">
        <button type="button" className="quiet" onClick={make}>
          Add ring kind
        </button>
        <span role="status">
          {missing && (!inner || !wire) && (
            <span className="fault">
              {inner ? 'The wire is still needed.' : 'The inner diameter is still needed.'}
            </span>
          )}
        </span>
      </div>
    </fieldset>
  );
}
