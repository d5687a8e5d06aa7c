'use client';
/** What of a file did not come over as it stood, by kind, each with its lines. */
import { useState } from 'react';
import { lossWords } from '#app/words/transcript-words.ts';
import { isLost, type Loss, type LossCode } from '#lib/transcript/loss.ts';
import styles from './transcript-file.module.css';

/** Lines of one kind that are shown at first. */
const SHOWN = 20;

interface LossListProps {
  readonly losses: readonly Loss[];
  /** Said above what is left out. */
  readonly leftOut?: string;
}

export function LossList({
  losses,
  leftOut = 'The file itself is kept whole; only these parts of it are not in the cues.',
}: LossListProps) {
  const kinds = [...Map.groupBy(losses, (loss) => loss.code)];
  const left = kinds.filter(([code]) => isLost(code));
  const altered = kinds.filter(([code]) => !isLost(code));
  if (kinds.length === 0) return <p>Everything in the file came over as it stands.</p>;
  return (
    <>
      {left.length > 0 && (
        <>
          <h4>Left out</h4>
          <p className="hint">{leftOut}</p>
          <Kinds kinds={left} />
        </>
      )}
      {altered.length > 0 && (
        <>
          <h4>Taken, but not as it stood</h4>
          <Kinds kinds={altered} />
        </>
      )}
    </>
  );
}

function Kinds({ kinds }: { readonly kinds: readonly [LossCode, readonly Loss[]][] }) {
  return (
    <ul className={styles.kinds}>
      {kinds.map(([code, lines]) => (
        <li key={code}>
          <Kind code={code} lines={lines} />
        </li>
      ))}
    </ul>
  );
}

function Kind({ code, lines }: { readonly code: LossCode; readonly lines: readonly Loss[] }) {
  const [shown, setShown] = useState(SHOWN);
  return (
    <details>
      <summary>
        {lossWords(code)} ({lines.length === 1 ? `line ${lines[0]?.line}` : `${lines.length} places`})
      </summary>
      <ul>
        {lines.slice(0, shown).map(({ line, text }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a loss has no id, and the list never changes its order
          <li key={index}>
            Line {line}
            {text !== '' && (
              <>
                : <q className={styles.text}>{text}</q>
              </>
            )}
          </li>
        ))}
      </ul>
      {shown < lines.length && (
        <button type="button" className="quiet" onClick={() => setShown(lines.length)}>
          Show all {lines.length} places
        </button>
      )}
    </details>
  );
}
