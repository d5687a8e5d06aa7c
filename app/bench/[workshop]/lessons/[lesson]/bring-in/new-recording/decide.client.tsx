'use client';
/** The edit list with what it does to the lesson, and the three ways to decide. */
import { useMemo, useRef, useState } from 'react';
import { cutItemWords, decideFaultWords, RE_EDITED } from '#app/words/recording-change-words.ts';
import type { Comparison } from '#lib/data/comparisons.ts';
import type { EditList } from '#lib/retiming/edit-list.ts';
import { heardNew } from '#lib/retiming/said-again.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { useDraft } from '../../draft.client.tsx';
import { Edits, useEdits } from './edits.client.tsx';
import styles from './new-recording.module.css';
import { sendDecision } from './send-decision.ts';

export type Decided = 'move' | 'leave' | 'refuse' | 'placed';

interface DecideProps {
  readonly comparison: Comparison;
  /** Null where the sounds could not be compared. */
  readonly list: EditList | null;
  readonly api: string;
  readonly onDecided: (decided: Decided) => void;
}

export function Decide({ comparison, list: found, api, onDecided }: DecideProps) {
  const draft = useDraft();
  const { list, setList, stays, wordsStay, onWordsStay } = useEdits(found);
  const [heard, setHeard] = useState<readonly Cue[] | null>(null);
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const wish = useRef<{ readonly id: string; readonly version: number } | null>(null);
  const lesson = useMemo(() => ({ content: draft.content, cues: draft.cues }), [draft.content, draft.cues]);

  const decide = async (decided: Decided) => {
    if (busy) return;
    if (wish.current?.version !== draft.version)
      wish.current = { id: crypto.randomUUID(), version: draft.version };
    setBusy(true);
    setFault(null);
    const code = await sendDecision(`${api}/comparison/${comparison.id}`, decided, {
      saveId: wish.current.id,
      version: draft.version,
      list,
      wordsStay: stays,
      // Only what lies in new parts is asked for.
      heard: list ? heardNew(list, heard ?? []) : [],
    });
    setBusy(false);
    if (code === 'draft-is-newer') void draft.refresh();
    if (code) return setFault(code);
    await draft.refresh();
    onDecided(decided);
  };

  return (
    <>
      {list && (
        <Edits
          comparison={comparison}
          list={list}
          draft={lesson}
          oldApi={api}
          names={RE_EDITED}
          lostWords={cutItemWords}
          mayEdit={draft.mayEdit}
          wordsStay={wordsStay}
          api={api}
          heard={heard}
          onHeard={setHeard}
          onList={setList}
          onWordsStay={onWordsStay}
        />
      )}
      {draft.mayEdit ? (
        <section aria-label="Decide" className={styles.decide}>
          {list && (
            <button
              type="button"
              disabled={draft.saveState !== 'saved' && !busy}
              aria-disabled={busy}
              onClick={() => void decide('move')}
            >
              {busy ? 'Doing it…' : 'Take the new recording and move everything'}
            </button>
          )}
          <button type="button" className="quiet" aria-disabled={busy} onClick={() => void decide('refuse')}>
            Keep the old recording
          </button>
          <button type="button" className="quiet" aria-disabled={busy} onClick={() => void decide('leave')}>
            Take the new recording, leave all times as they are
          </button>
          {list && draft.saveState !== 'saved' && (
            <p className="hint">Moving waits until the draft is saved.</p>
          )}
        </section>
      ) : (
        <p className="hint">Deciding needs the role of an editor.</p>
      )}
      {fault !== null && (
        <p className="notice alarm" role="alert">
          {decideFaultWords(fault)}
        </p>
      )}
    </>
  );
}
