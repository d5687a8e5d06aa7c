'use client';
import { likelyNext, type NearRing } from '#lib/weave/near-rings.ts';
/** The rings that a placement passes, each with its side, and the rings that its lie is about. */
import type { Placement, Side } from '#lib/weave/placement.ts';
import styles from './making.module.css';
import { type NamedRing, RingRefField } from './ring-refs.client.tsx';

type Put = (over: Partial<Placement>, what: string) => void;

const otherSide = (side: Side): Side => (side === 'front' ? 'back' : 'front');

export interface PlacementPassesProps {
  readonly placement: Placement;
  readonly near: readonly (NearRing & NamedRing)[];
  readonly put: Put;
}

export function PlacementPasses({ placement, near, put }: PlacementPassesProps) {
  const { passes } = placement;
  const isFull = passes.length >= 50;
  const add = (from: Side) => {
    const ring = likelyNext(
      near,
      placement.row ?? '',
      passes.map((pass) => pass.ring),
    );
    if (!isFull) put({ passes: [...passes, ring ? { from, ring } : { from }] }, 'passed rings');
  };
  return (
    <fieldset>
      <legend>Rings it passes, in order</legend>
      {passes.length === 0 && <p className="soft">None yet.</p>}
      <ol className={styles.passList}>
        {passes.map((pass, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a pass is its place in the order
          <li key={at} className={styles.pass}>
            <RingRefField
              label={`Pass ${at + 1}`}
              value={pass.ring}
              near={near}
              onTake={(ring) =>
                put(
                  { passes: passes.with(at, ring ? { ...pass, ring } : { from: pass.from }) },
                  'passed rings',
                )
              }
            />
            <button
              type="button"
              className="quiet"
              onClick={() =>
                put({ passes: passes.with(at, { ...pass, from: otherSide(pass.from) }) }, 'passed rings')
              }
            >
              <span className="unseen">Pass {at + 1}: </span>
              from the {pass.from}
              <span className="unseen">; turn to the {otherSide(pass.from)}</span>
            </button>
            <button
              type="button"
              className="bare"
              onClick={() => put({ passes: passes.toSpliced(at, 1) }, 'passed rings')}
            >
              Take out<span className="unseen"> pass {at + 1}</span>
            </button>
          </li>
        ))}
      </ol>
      <div className="row">
        {(['front', 'back'] as const).map((from) => (
          <button key={from} type="button" className="quiet" aria-disabled={isFull} onClick={() => add(from)}>
            Pass one from the {from}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

/** Only where something lies otherwise than as it falls. */
export function PlacementLays({ placement, near, put }: PlacementPassesProps) {
  const lays = placement.lays ?? [];
  const keep = (rings: typeof lays): void => put({ lays: rings }, 'rings that are laid');
  return (
    <fieldset>
      <legend>Rings that lie so</legend>
      {lays.length === 0 && <p className="soft">The rings that this placement adds.</p>}
      <ol className={styles.passList}>
        {lays.map((ref, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a ring is its place in the order
          <li key={at} className={styles.pass}>
            <RingRefField
              label={`Ring ${at + 1}`}
              value={ref}
              near={near}
              onTake={(ring) => keep(ring ? lays.with(at, ring) : lays.toSpliced(at, 1))}
            />
            <button type="button" className="bare" onClick={() => keep(lays.toSpliced(at, 1))}>
              Take out<span className="unseen"> ring {at + 1} that lies so</span>
            </button>
          </li>
        ))}
      </ol>
      {near[0] && lays.length < 50 && (
        <button
          type="button"
          className="quiet"
          onClick={() => {
            const ring = likelyNext(near, '', lays);
            if (ring) keep([...lays, ring]);
          }}
        >
          Name another ring that lies so
        </button>
      )}
    </fieldset>
  );
}
