'use client';
/** The closed rings that a placement picks up: how many, of which kind, into which row, from which side. */
import { type Placement, SIDES } from '#lib/weave/placement.ts';
import { ChoiceField } from './fields/choice-field.client.tsx';
import { NumberField } from './fields/number-field.client.tsx';
import { TextField } from './fields/text-field.client.tsx';
import styles from './making.module.css';

export interface PlacementCarriesProps {
  readonly placement: Placement;
  readonly place: string;
  /** Ring kinds: id and what it is called. */
  readonly kinds: readonly (readonly [string, string])[];
  /** The kinds, and one that was taken out, where it is still named. */
  readonly withMissing: (id: string | null) => readonly (readonly [string, string])[];
  readonly rows: readonly string[];
  readonly put: (over: Partial<Placement>, what: string, run?: string) => void;
}

export function PlacementCarries({ placement, place, kinds, withMissing, rows, put }: PlacementCarriesProps) {
  const { carries } = placement;
  return (
    <fieldset>
      <legend>{placement.opened === null ? 'Closed rings it lays out' : 'Closed rings it picks up'}</legend>
      {carries.map((carry, at) => {
        const replace = (over: Partial<typeof carry>, run?: string) =>
          put({ carries: carries.with(at, { ...carry, ...over }) }, 'carried rings', run);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a carry is its place in the order
          <div key={at} className={styles.carry}>
            <NumberField
              label="How many"
              place={`${place}/carry-${at}`}
              value={carry.count}
              places={0}
              least={1}
              most={1000}
              onTake={(count, run) => replace({ count: count ?? 1 }, run)}
            />
            <ChoiceField
              label="of"
              value={carry.ringKind}
              choices={withMissing(carry.ringKind)}
              onTake={(ringKind) => replace({ ringKind })}
            />
            <TextField
              label="Into row"
              value={carry.row ?? ''}
              maxLength={20}
              known={rows}
              onTake={(row, run) => replace({ row }, run)}
            />
            {placement.opened !== null && (
              <ChoiceField<string>
                label="Entered from"
                value={carry.from ?? ''}
                choices={[['', 'not said'] as const, ...SIDES.map((side) => [side, `the ${side}`] as const)]}
                onTake={(side) => {
                  const from = SIDES.find((one) => one === side);
                  const { from: _, ...rest } = carry;
                  put({ carries: carries.with(at, from ? { ...carry, from } : rest) }, 'carried rings');
                }}
              />
            )}
            <button
              type="button"
              className="bare"
              onClick={() => put({ carries: carries.toSpliced(at, 1) }, 'carried rings')}
            >
              Take out<span className="unseen"> these closed rings</span>
            </button>
          </div>
        );
      })}
      {kinds[0] && carries.length < 20 ? (
        <button
          type="button"
          className="quiet"
          onClick={() =>
            put(
              {
                carries: [
                  ...carries,
                  {
                    ringKind: kinds[0]?.[0] ?? '',
                    count: 1,
                    ...(placement.opened === null ? {} : { from: 'front' }),
                    // A carried ring seldom joins the row of the ring that carries it.
                    ...rowFor(rows, placement.row ?? ''),
                  },
                ],
              },
              'carried rings',
            )
          }
        >
          Add closed rings
        </button>
      ) : (
        kinds.length === 0 && <p className="hint">Describe a ring kind first.</p>
      )}
    </fieldset>
  );
}

function rowFor(rows: readonly string[], own: string): { readonly row?: string } {
  const other = rows.find((row) => row !== own);
  return other === undefined || other === '' ? {} : { row: other };
}
