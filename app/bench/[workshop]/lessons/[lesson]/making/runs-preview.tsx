/** How runs fall over a piece: one block a repeat in the colours of its rings, and the same in words. */
import type { Content } from '#lib/lesson/content.ts';
import { inRun, planRuns, unitOf } from '#lib/weave/runs.ts';
import styles from './making.module.css';

type Previewed = Pick<Content, 'repeat' | 'runs' | 'ringKinds'>;

interface RunsPreviewProps {
  readonly content: Previewed;
  readonly repeats: number;
  /** Blocks are left out where the picture itself shows the colours. */
  readonly hasPicture: boolean;
}

export function RunsPreview({ content, repeats, hasPicture }: RunsPreviewProps) {
  const stretches = planRuns(content.runs, repeats);
  const kindOf = (id: string) => content.ringKinds.find((kind) => kind.id === id);
  let at = 0;
  return (
    <figure className={styles.runs}>
      {hasPicture ? null : (
        <svg viewBox={`0 0 ${repeats * 10} 20`} preserveAspectRatio="none" aria-hidden="true">
          {stretches.flatMap(({ run, repeats: times }) => {
            const colours = unitOf(content, run?.unit ?? '').flatMap((placement) => {
              const { opened, carries } = inRun(placement, run);
              const ids = [...(opened === null ? [] : [opened]), ...carries.map(({ ringKind }) => ringKind)];
              return ids.map((id) => kindOf(id)?.colourCode ?? '#b9ae9c');
            });
            return Array.from({ length: times }, () => {
              at += 1;
              return colours.map((colour, band) => (
                <rect
                  // biome-ignore lint/suspicious/noArrayIndexKey: a band is its place in the repeat
                  key={`${at} ${band}`}
                  x={(at - 1) * 10 + 0.4}
                  y={(20 / colours.length) * band}
                  width={9.2}
                  height={20 / colours.length}
                  fill={colour}
                />
              ));
            });
          })}
        </svg>
      )}
      <figcaption>
        {stretches
          .map(({ run, repeats: times }) => {
            const swaps = run?.swaps.map((swap) => kindOf(swap.by)?.name ?? 'another ring') ?? [];
            const unit = run && run.unit !== '' ? ` of ${run.unit}` : '';
            return `${times}${unit}${swaps.length > 0 ? ` with ${swaps.join(' and ')}` : ' as described'}`;
          })
          .join(', then ')}
        .
      </figcaption>
    </figure>
  );
}
