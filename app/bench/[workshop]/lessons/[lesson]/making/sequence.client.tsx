'use client';
/** The ring sequence in its three parts, what holds of the whole piece, and the count of rings as it grows. */
import { useEffect, useState } from 'react';
import { LEANINGS } from '#lib/lesson/content.ts';
import { mirrorMaking } from '#lib/lesson/mirror-making.ts';
import { ringsWord } from '#lib/lesson/placement-words.ts';
import { checkPiece, type PieceFault } from '#lib/weave/check-piece.ts';
import { SEQUENCE_PARTS, type Sequence, type SequencePart } from '#lib/weave/placement.ts';
import { unitsOf } from '#lib/weave/runs.ts';
import { ringsAdded, runningCounts } from '#lib/weave/sequence.ts';
import { useDraft } from '../draft.client.tsx';
import { thingInAddress } from '../land-on-thing.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import { focusAdded } from './focus-added.ts';
import styles from './making.module.css';
import { PieceEndsFields } from './piece-ends.client.tsx';
import { PieceState } from './piece-state.client.tsx';
import { PlacementCard } from './placement-card.client.tsx';
import { Runs } from './runs.client.tsx';
import { StartFromWeave } from './start-from-weave.client.tsx';
import { TwoSizesTogether } from './two-sizes.client.tsx';
import { useList } from './use-list.ts';
import { type Pictures, useWeavePictures, WholePiece } from './weave-pictures.client.tsx';

const PARTS: Readonly<Record<SequencePart, { readonly title: string; readonly about: string }>> = {
  start: { title: 'Start', about: 'Made once, before the first repeat.' },
  repeat: { title: 'Repeat unit', about: 'Made again and again until the piece is long enough.' },
  finishing: { title: 'Finishing', about: 'Made once, after the last repeat.' },
};

export interface RingSequenceProps {
  readonly lessonId: string;
  /** Where pictures of the sequence are asked for. */
  readonly picturesAddress: string;
}

export function RingSequence({ lessonId, picturesAddress }: RingSequenceProps) {
  const { content } = useDraft();
  const [turned, setTurned] = useState({ roll: 0, side: 'front' as 'front' | 'back' });
  const pictures = useWeavePictures(picturesAddress, turned);
  const [open, setOpen] = useState<string | null>(null);
  // Other screens lead here by the id of a placement or of a field of it.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the address is looked at when it changes, not the content
  useEffect(() => {
    const fromAddress = () => {
      const thing = thingInAddress();
      const placed = SEQUENCE_PARTS.flatMap((part) => content[part]).find(({ id }) => thing.startsWith(id));
      if (placed) setOpen(placed.id);
    };
    fromAddress();
    window.addEventListener('hashchange', fromAddress);
    return () => window.removeEventListener('hashchange', fromAddress);
  }, []);
  let before = 0;
  const check = checkPiece(content);
  const placed = content.start.length + content.repeat.length + content.finishing.length;
  if (placed === 0 && content.ringKinds.length === 0)
    return (
      <>
        <p className="soft">
          A piece of beads, cord or knots has no rings to place: describe its steps below, and under Materials
          what it takes, for the whole piece, for each repeat or for each 100 mm. For a piece of rings,
          describe a ring kind first; then its placements stand here.
        </p>
        <StartFromWeave key="start" />
      </>
    );
  return (
    <>
      {/* The same as above: a weave that was chosen before its rings were described stays chosen. */}
      <StartFromWeave key="start" />
      <Leaning />
      <PieceState check={check} />
      <WholePiece address={picturesAddress} pictures={pictures} turned={turned} onTurn={setTurned} />
      <TwoSizesTogether weave={pictures?.weave ?? null} />
      {SEQUENCE_PARTS.map((part) => {
        const from = before;
        before += content[part].reduce((sum, placement) => sum + ringsAdded(placement), 0);
        return (
          <Part
            key={part}
            part={part}
            from={from}
            lessonId={lessonId}
            faults={check.faults}
            pictures={pictures}
            open={open}
            onOpen={setOpen}
          />
        );
      })}
      <PieceEndsFields />
      <Runs lessonId={lessonId} picturesAddress={picturesAddress} />
    </>
  );
}

function Leaning() {
  const { content, change, mayEdit } = useDraft();
  const hand = content.leaning === 'left' ? 'right' : content.leaning === 'right' ? 'left' : null;
  const mirror = () => change(mirrorMaking(content), `mirror to the ${hand}`);
  return (
    <div className={styles.leaning}>
      <ChoiceField
        id="leaning"
        label="Leaning"
        value={content.leaning}
        choices={LEANINGS.map((one) => [one, one === 'none' ? 'has no hand' : `leans ${one}`] as const)}
        hint="Only for weaves that have a hand."
        onTake={(value) => change([{ kind: 'set', field: 'leaning', value }], 'leaning')}
      />
      {hand && mayEdit && (
        <button type="button" className="quiet" onClick={mirror}>
          Mirror everything to the {hand}
        </button>
      )}
    </div>
  );
}

interface PartProps {
  readonly part: SequencePart;
  readonly from: number;
  readonly lessonId: string;
  readonly faults: readonly PieceFault[];
  readonly pictures: Pictures;
  readonly open: string | null;
  readonly onOpen: (id: string | null) => void;
}

function Part({ part, from, lessonId, faults, pictures, open, onOpen }: PartProps) {
  const list = useList(part, `placement in ${part}`);
  const { mayEdit, content } = useDraft();
  const counts = runningCounts(list.items, from);
  const { title, about } = PARTS[part];
  const rows = rowsOf(content);
  const units = unitsOf(content).filter((unit) => unit !== '');
  const add = () => {
    const id = crypto.randomUUID();
    const last = list.items.at(-1);
    list.add({
      id,
      opened: content.ringKinds[0]?.id ?? null,
      ...(last?.row ? { row: last.row } : {}),
      ...(last?.unit ? { unit: last.unit } : {}),
      carries: [],
      passes: [],
      lie: 'as it falls',
      sentence: '',
      atMs: null,
      pictureText: '',
    });
    onOpen(id);
    focusAdded(id);
  };
  return (
    <section className={styles.part} aria-labelledby={`part-${part}`}>
      <h3 id={`part-${part}`}>{title}</h3>
      <p className="soft">
        {about} {list.items.length > 0 && `Adds ${ringsWord('', (counts.at(-1) ?? from) - from)}.`}
      </p>
      <ol className={styles.cards}>
        {list.items.map((placement, index) => (
          <PlacementCard
            key={placement.id}
            placement={placement}
            part={part}
            index={index}
            rings={counts[index] ?? 0}
            lessonId={lessonId}
            list={list}
            faults={faults.filter((fault) => fault.placementId === placement.id)}
            pictures={pictures}
            rows={rows}
            units={units}
            isOpen={open === placement.id}
            onToggle={() => onOpen(open === placement.id ? null : placement.id)}
          />
        ))}
      </ol>
      {mayEdit && (
        <button id={`add-to-${part}`} type="button" className="quiet" onClick={add}>
          Add a placement to{' '}
          {part === 'start' ? 'the start' : part === 'repeat' ? 'the repeat unit' : 'the finishing'}
        </button>
      )}
    </section>
  );
}

/** Rows that placements name, in the order in which they first appear. */
function rowsOf(content: Sequence): readonly string[] {
  const named = SEQUENCE_PARTS.flatMap((part) =>
    content[part].flatMap((placement) => [
      placement.row ?? '',
      ...placement.carries.map((carry) => carry.row ?? ''),
    ]),
  );
  return [...new Set(named)].filter((row) => row !== '');
}
