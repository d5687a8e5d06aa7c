/** A picture of how rings and cost grow with the measure; the table of sizes says the same in numbers. */

import type { GrowthStep } from '#lib/kit/kit-growth.ts';
import { formatAmount, formatMoney } from '#lib/kit/money.ts';
import { milliToMinor } from '#lib/kit/price.ts';
import styles from './growth-picture.module.css';

interface GrowthPictureProps {
  readonly steps: readonly GrowthStep[];
  readonly currency: string;
  /** The measure that a kit is shown for, mm; null where none is. */
  readonly bodyMm: number | null;
}

const WIDTH = 360;
const HEIGHT = 190;
const LEFT = 52;
const RIGHT = 10;
const TOP = 12;
const BOTTOM = 34;

interface Line {
  readonly className: string | undefined;
  readonly of: (step: GrowthStep) => number;
}

export const GrowthPicture = ({ steps, currency, bodyMm }: GrowthPictureProps) => {
  const first = steps[0];
  const last = steps.at(-1);
  if (!first || !last || first.fromMm === last.toMm) return null;
  const counted = steps.some((step) => step.issued > 0)
    ? { title: 'Rings in the kit', of: (step: GrowthStep) => step.issued }
    : { title: 'Repeats', of: (step: GrowthStep) => step.repeats };
  const priced = steps.some((step) => step.packsMinor > 0);
  const used = (step: GrowthStep): number => milliToMinor(step.proRataMilli);
  return (
    <div className={styles.pictures}>
      <Chart
        steps={steps}
        bodyMm={bodyMm}
        title={counted.title}
        told={`${counted.of(first)} at ${millimetres(first.fromMm)}, ${counted.of(last)} at ${millimetres(last.toMm)}.`}
        tick={(n) => String(n)}
        lines={[{ className: styles.first, of: counted.of }]}
      />
      {priced ? (
        <Chart
          steps={steps}
          bodyMm={bodyMm}
          title={`Cost, ${currency}`}
          told={`In whole packs ${formatMoney(first.packsMinor, currency)} at ${millimetres(first.fromMm)}, ${formatMoney(last.packsMinor, currency)} at ${millimetres(last.toMm)}; what is used of them ${formatMoney(used(first), currency)} and ${formatMoney(used(last), currency)}.`}
          tick={(n) => formatAmount(n, currency)}
          lines={[
            { className: styles.first, of: (step) => step.packsMinor },
            { className: styles.second, of: used },
          ]}
          legend
        />
      ) : null}
    </div>
  );
};

const millimetres = (mm: number): string => `${Math.round(mm)} mm`;

interface ChartProps {
  readonly steps: readonly GrowthStep[];
  readonly bodyMm: number | null;
  readonly title: string;
  /** What the picture shows, in words. */
  readonly told: string;
  readonly tick: (n: number) => string;
  readonly lines: readonly Line[];
  readonly legend?: boolean;
}

function Chart({ steps, bodyMm, title, told, tick, lines, legend }: ChartProps) {
  const fromMm = steps[0]?.fromMm ?? 0;
  const toMm = steps.at(-1)?.toMm ?? 1;
  const values = lines.flatMap((line) => steps.map(line.of));
  const marks = ticks(Math.min(...values), Math.max(...values));
  const low = marks[0] ?? 0;
  const high = marks.at(-1) ?? 1;
  const x = (mm: number): number => LEFT + ((mm - fromMm) / (toMm - fromMm)) * (WIDTH - LEFT - RIGHT);
  const y = (n: number): number => HEIGHT - BOTTOM - ((n - low) / (high - low)) * (HEIGHT - TOP - BOTTOM);
  return (
    <figure className={styles.picture}>
      <figcaption>
        <strong>{title}</strong>
        {legend ? (
          <span className={styles.legend}>
            <span className={styles.solid}>whole packs</span>{' '}
            <span className={styles.dashed}>what is used</span>
          </span>
        ) : null}
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`${title}: ${told}`}>
        {marks.map((mark) => (
          <g key={mark}>
            <line className={styles.grid} x1={LEFT} x2={WIDTH - RIGHT} y1={y(mark)} y2={y(mark)} />
            <text className={styles.tick} x={LEFT - 8} y={y(mark) + 5} textAnchor="end">
              {tick(mark)}
            </text>
          </g>
        ))}
        {measureTicks(fromMm, toMm).map((mm) => (
          <text key={mm} className={styles.tick} x={x(mm)} y={HEIGHT - 10} textAnchor="middle">
            {mm}
          </text>
        ))}
        <text className={styles.tick} x={LEFT - 8} y={HEIGHT - 10} textAnchor="end">
          mm
        </text>
        {bodyMm !== null && bodyMm >= fromMm && bodyMm <= toMm ? (
          <line className={styles.here} x1={x(bodyMm)} x2={x(bodyMm)} y1={TOP} y2={HEIGHT - BOTTOM} />
        ) : null}
        {lines.map(({ className, of }) => (
          <path key={className} className={className} d={stairs(steps, x, (step) => y(of(step)))} />
        ))}
      </svg>
    </figure>
  );
}

/** Level where a kit holds, upright half way to the next one. */
function stairs(
  steps: readonly GrowthStep[],
  x: (mm: number) => number,
  y: (step: GrowthStep) => number,
): string {
  const round = (n: number): string => n.toFixed(1);
  return steps
    .map((step, index) => {
      const before = steps[index - 1];
      const after = steps[index + 1];
      const from = before ? (before.toMm + step.fromMm) / 2 : step.fromMm;
      const to = after ? (step.toMm + after.fromMm) / 2 : step.toMm;
      return `${index === 0 ? 'M' : 'L'}${round(x(from))} ${round(y(step))}H${round(x(to))}`;
    })
    .join('');
}

/** Three to six round numbers that take in the least and the most. */
function ticks(least: number, most: number): readonly number[] {
  const step = roundStep(Math.max(most - least, 1) / 4);
  const from = Math.floor(least / step) * step;
  const to = Math.max(Math.ceil(most / step) * step, from + step);
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step);
}

/** The least of 1, 2, 5, 10, 20, ... that is at least so much. */
function roundStep(least: number): number {
  const ten = 10 ** Math.floor(Math.log10(Math.max(least, 1)));
  return ([1, 2, 5, 10].find((n) => n * ten >= least) ?? 10) * ten;
}

function measureTicks(fromMm: number, toMm: number): readonly number[] {
  const step = roundStep((toMm - fromMm) / 6);
  const first = Math.ceil(fromMm / step) * step;
  return Array.from({ length: Math.floor((toMm - first) / step) + 1 }, (_, index) => first + index * step);
}
