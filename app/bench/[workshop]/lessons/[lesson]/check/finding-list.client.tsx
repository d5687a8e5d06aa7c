'use client';

import { findingWords, SCREEN_NAMES } from '#app/words/finding.ts';
import { type Finding, findingKey } from '#lib/lesson/finding.ts';
import { findingPlace } from '#lib/lesson/finding-place.ts';
import type { Missing } from '#lib/lesson/missing.ts';
import styles from './check.module.css';

interface FindingListProps {
  readonly missing: Missing;
  readonly bench: string;
  readonly mayEdit: boolean;
  readonly dismissed: readonly string[];
  readonly onPutAside: (keys: readonly string[], label: string) => void;
}

export function FindingList({ missing, bench, mayEdit, dismissed, onPutAside }: FindingListProps) {
  const { blocks, warns } = missing;
  return (
    <>
      <p role="status">
        {blocks.length + warns.length === 0
          ? 'Nothing that we can see. '
          : `${blocks.length} to mend before publishing, ${warns.length} to think about. `}
      </p>
      {blocks.length + warns.length === 0 ? null : (
        <p className="hint">
          Most important first. What is marked “Mend first” keeps the lesson from being published; what is
          marked “Think about” does not.
        </p>
      )}
      <ul className={styles.findings}>
        {blocks.map((finding) => (
          <Row key={findingKey(finding)} finding={finding} bench={bench} />
        ))}
        {warns.map((finding) => (
          <Row key={findingKey(finding)} finding={finding} bench={bench}>
            {mayEdit ? (
              <button
                type="button"
                className="bare"
                onClick={() => onPutAside([...dismissed, findingKey(finding)], 'put a warning aside')}
              >
                Put aside<span className="unseen">: {findingWords(finding)}</span>
              </button>
            ) : null}
          </Row>
        ))}
      </ul>
      {missing.dismissed.length === 0 ? null : (
        <details>
          <summary>{missing.dismissed.length} put aside</summary>
          <ul className={styles.findings}>
            {missing.dismissed.map((finding) => (
              <Row key={findingKey(finding)} finding={finding} bench={bench}>
                {mayEdit ? (
                  <button
                    type="button"
                    className="bare"
                    onClick={() =>
                      onPutAside(
                        dismissed.filter((key) => key !== findingKey(finding)),
                        'bring a warning back',
                      )
                    }
                  >
                    Bring back<span className="unseen">: {findingWords(finding)}</span>
                  </button>
                ) : null}
              </Row>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

interface RowProps {
  readonly finding: Finding;
  readonly bench: string;
  readonly children?: React.ReactNode;
}

const Row = ({ finding, bench, children }: RowProps) => (
  <li data-weight={finding.weight} data-code={finding.code}>
    <p>
      <strong className={styles.weight}>{finding.weight === 'blocks' ? 'Mend first' : 'Think about'}</strong>{' '}
      {findingWords(finding)}
    </p>
    <div className={styles.ways}>
      <a href={`${bench}/${finding.screen}#${encodeURIComponent(findingPlace(finding))}`}>
        Go to {SCREEN_NAMES[finding.screen]}
        <span className="unseen">: {findingWords(finding)}</span>
      </a>
      {children}
    </div>
  </li>
);
