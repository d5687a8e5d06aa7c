/** Asks a pupil's measure, and of which revision she holds a kit. Without script the form asks the server. */
import { type AskedMeasure, MEASURE_UNITS, type MeasureUnit } from '#lib/lesson/asked-measure.ts';
import styles from './kit.module.css';

const UNIT_NAMES: Readonly<Record<MeasureUnit, string>> = { mm: 'millimetres', in: 'inches' };

interface MeasureFormProps {
  readonly page: string;
  readonly goesByMeasure: boolean;
  readonly asked: AskedMeasure;
  readonly faulty: boolean;
  readonly held: number | null;
  readonly earlier: readonly number[];
  readonly onAsk: (asked: AskedMeasure) => void;
}

export const MeasureForm = ({ page, goesByMeasure, held, earlier, ...typed }: MeasureFormProps) => (
  <form method="get" action={`${page}#kit`} className={styles.form}>
    {goesByMeasure ? <MeasureFields {...typed} /> : null}
    {earlier.length > 0 ? (
      <div className="field">
        <label htmlFor="kit-held">I hold a kit of</label>
        <select id="kit-held" name="held" defaultValue={held ?? ''}>
          <option value="">none</option>
          {earlier.map((number) => (
            <option key={number} value={number}>
              revision {number}
            </option>
          ))}
        </select>
      </div>
    ) : null}
    <button type="submit">Show my kit</button>
  </form>
);

const MeasureFields = ({ asked, faulty, onAsk }: Pick<MeasureFormProps, 'asked' | 'faulty' | 'onAsk'>) => (
  <>
    <div className="field">
      <label htmlFor="kit-measure">Your measure</label>
      <input
        id="kit-measure"
        name="measure"
        type="text"
        inputMode="decimal"
        autoComplete="off"
        maxLength={40}
        value={asked.text}
        aria-invalid={faulty}
        aria-describedby={faulty ? 'kit-fault' : undefined}
        onChange={(event) => onAsk({ ...asked, text: event.target.value })}
      />
    </div>
    <fieldset>
      <legend>in</legend>
      <div className={styles.choices}>
        {MEASURE_UNITS.map((unit) => (
          <label key={unit} className="tick">
            <input
              type="radio"
              name="unit"
              value={unit}
              checked={asked.unit === unit}
              onChange={() => onAsk({ ...asked, unit })}
            />
            {UNIT_NAMES[unit]}
          </label>
        ))}
      </div>
    </fieldset>
    <fieldset>
      <legend>measured</legend>
      <div className={styles.choices}>
        <label className="tick">
          <input
            type="radio"
            name="of"
            value="wrist"
            checked={asked.of === 'wrist'}
            onChange={() => onAsk({ ...asked, of: 'wrist' })}
          />
          on the body (wrist, ankle, neck)
        </label>
        <label className="tick">
          <input
            type="radio"
            name="of"
            value="length"
            checked={asked.of === 'length'}
            onChange={() => onAsk({ ...asked, of: 'length' })}
          />
          as finished length
        </label>
      </div>
    </fieldset>
  </>
);
