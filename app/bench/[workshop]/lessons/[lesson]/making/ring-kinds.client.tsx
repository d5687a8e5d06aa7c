'use client';
/** The ring kinds of a lesson, and the form that makes a new one. */
import { useState } from 'react';
import { colourCodeOf } from '#lib/rings/colour-words.ts';
import { METALS, metalNameOf } from '#lib/rings/metals.ts';
import type { RingKind, StatedSize } from '#lib/rings/ring-kind.ts';
import { useDraft } from '../draft.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { SizeField } from './fields/size-field.client.tsx';
import { TextField } from './fields/text-field.client.tsx';
import { focusAdded } from './focus-added.ts';
import styles from './making.module.css';
import { metalChoices, metalOf } from './metal-choices.ts';
import { RingKindCard } from './ring-kind-card.client.tsx';
import { useList } from './use-list.ts';

export function RingKinds({ lessonId }: { lessonId: string }) {
  const kinds = useList('ringKinds', 'ring kind');
  const { mayEdit } = useDraft();
  // Begun anew with each that is made here; what others add leaves typed words alone.
  const [made, setMade] = useState(0);
  const make = (kind: RingKind) => {
    kinds.add(kind);
    setMade(made + 1);
    // What was left out is filled in on its card; else the next kind can be begun.
    const next = kind.colour === '' ? `${kind.id}-colour` : 'new-ring-name';
    focusAdded(next);
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
      {mayEdit && <NewRingKind key={made} lessonId={lessonId} onMake={make} />}
      <Densities />
    </>
  );
}

/** Everything a kind needs, so that the next one can be begun at once: Enter adds it and comes back to the name. */
function NewRingKind({ lessonId, onMake }: { lessonId: string; onMake: (kind: RingKind) => void }) {
  const { content } = useDraft();
  const last = content.ringKinds.at(-1);
  const [name, setName] = useState('');
  const [inner, setInner] = useState<StatedSize | null>(null);
  // Kinds of one piece mostly share their wire; undefined until another is said.
  const [said, setWire] = useState<StatedSize | null>();
  const wire = said === undefined ? (last?.wire ?? null) : said;
  const [metal, setMetal] = useState('copper');
  const [colour, setColour] = useState('');
  const [missing, setMissing] = useState(false);
  const place = `${lessonId}/new-ring-kind`;
  const make = () => {
    if (!inner || !wire) {
      setMissing(true);
      document.getElementById(inner ? 'new-ring-wire' : 'new-ring-inner')?.focus();
      return;
    }
    const made = metalOf(metal, content.ringKinds);
    onMake({
      id: crypto.randomUUID(),
      name,
      innerDiameter: inner,
      measuredInnerMm: null,
      wire,
      ...made,
      colour,
      colourCode: colourCodeOf(colour) ?? colourCodeOf(metalNameOf(made)) ?? '#b8643c',
      weighedHundredG: null,
      offer: null,
    });
  };
  return (
    <fieldset
      className={styles.newThing}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
        event.preventDefault();
        make();
      }}
    >
      <legend>Add a ring kind</legend>
      <div className={fieldStyles.grid}>
        <TextField id="new-ring-name" label="Name" placeholder="large copper" value={name} onTake={setName} />
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
        <ChoiceField<string>
          label="Metal"
          value={metal}
          choices={metalChoices(content.ringKinds)}
          onTake={setMetal}
        />
        <TextField label="Colour in words" placeholder="deep blue" value={colour} onTake={setColour} />
      </div>
      <div className="row">
        <button type="button" className="quiet" onClick={make}>
          Add ring kind
        </button>
        <span className="soft">
          or press <kbd>Enter</kbd>
        </span>
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

/** Where every reckoned mass comes from. */
function Densities() {
  return (
    <details className={styles.more}>
      <summary>Densities of the metals, and where they are from</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reached by keys */}
      <section className="table-frame" tabIndex={0} aria-label="Densities">
        <table>
          <thead>
            <tr>
              <th scope="col">Metal</th>
              <th scope="col">g/cm³</th>
              <th scope="col">Source</th>
            </tr>
          </thead>
          <tbody>
            {METALS.map((metal) => (
              <tr key={metal.id}>
                <th scope="row">{metal.name}</th>
                <td>{metal.densityGPerCm3}</td>
                <td>{metal.source}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="soft">Alloys vary by a few per cent. A weighed hundred always wins.</p>
    </details>
  );
}
