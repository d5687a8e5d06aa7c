'use client';
/** The edit list with what it does to the lesson, and the three ways to decide. */
import { useMemo, useRef, useState } from 'react';
import { carriedWords, decideFaultWords, speedWords } from '#app/words/recording-change-words.ts';
import type { Comparison } from '#lib/data/comparisons.ts';
import { adjustJoin, joinsOf } from '#lib/retiming/adjust.ts';
import { carryOver } from '#lib/retiming/carry-over.ts';
import type { EditList } from '#lib/retiming/edit-list.ts';
import { editPointsOf } from '#lib/retiming/edit-points.ts';
import { retakesIn } from '#lib/retiming/retakes.ts';
import { heardIn, heardNew } from '#lib/retiming/said-again.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { useDraft } from '../../draft.client.tsx';
import { EditPointCard } from './edit-point.client.tsx';
import { Heard } from './heard.client.tsx';
import { useHearing } from './hearing.client.tsx';
import styles from './new-recording.module.css';
import { Pairing } from './pairing.client.tsx';
import { sendDecision } from './send-decision.ts';

export type Decided = 'move' | 'leave' | 'refuse';

interface DecideProps {
  readonly comparison: Comparison;
  /** Null where the sounds could not be compared. */
  readonly list: EditList | null;
  readonly api: string;
  readonly onDecided: (decided: Decided) => void;
}

export function Decide({ comparison, list: found, api, onDecided }: DecideProps) {
  const draft = useDraft();
  const [list, setList] = useState(found);
  // Retakes by the moment at which their cut begins: places in the list change when points are moved.
  const [wordsOut, setWordsOut] = useState<ReadonlySet<number>>(new Set());
  const [heard, setHeard] = useState<readonly Cue[] | null>(null);
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const wish = useRef<{ readonly id: string; readonly version: number } | null>(null);
  const stays = useMemo(
    () =>
      list
        ? retakesIn(list)
            .filter(({ old }) => !wordsOut.has(old.endMs))
            .map(({ cut }) => cut)
        : [],
    [list, wordsOut],
  );

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
          wordsStay={new Set(stays)}
          api={api}
          heard={heard}
          onHeard={setHeard}
          onList={setList}
          onWordsStay={(endMs, stay) => {
            const next = new Set(wordsOut);
            if (stay) next.delete(endMs);
            else next.add(endMs);
            setWordsOut(next);
          }}
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

interface EditsProps {
  readonly comparison: Comparison;
  readonly list: EditList;
  readonly wordsStay: ReadonlySet<number>;
  readonly api: string;
  readonly heard: readonly Cue[] | null;
  readonly onHeard: (heard: readonly Cue[] | null) => void;
  readonly onList: (list: EditList) => void;
  readonly onWordsStay: (cutEndMs: number, stay: boolean) => void;
}

function Edits({ comparison, list, wordsStay, api, heard, onHeard, onList, onWordsStay }: EditsProps) {
  const draft = useDraft();
  const recording = (id: string) => `${api}/recordings/${id}`;
  const { hear, players } = useHearing(
    `${recording(comparison.oldRecordingId)}/media`,
    `${recording(comparison.newRecordingId)}/media`,
  );
  const points = useMemo(() => editPointsOf(list), [list]);
  const carried = useMemo(
    () => carryOver({ content: draft.content, cues: draft.cues }, list, { wordsStay, heard: heard ?? [] }),
    [draft.content, draft.cues, list, wordsStay, heard],
  );
  const joins = joinsOf(list);
  const move = (join: number, side: 'end' | 'start' | 'both', byMs: number) => {
    const { end = null, start = null } = joins[join] ?? {};
    onList(
      adjustJoin(list, join, {
        end: end === null || side === 'start' ? null : end + byMs,
        start: start === null || side === 'end' ? null : start + byMs,
      }),
    );
  };
  const speed = speedWords(list);
  return (
    <>
      <p>
        {points.length === 0
          ? 'The new recording sounds like the old one from beginning to end.'
          : `The new recording was edited at ${points.length === 1 ? 'one point' : `${points.length} points`}.`}{' '}
        {carriedWords(carried.carried)} go with their sound. Look at the points below, then decide.
      </p>
      {speed && <p className="notice caution">{speed}</p>}
      <Pairing
        list={list}
        points={points}
        oldPeaks={`${recording(comparison.oldRecordingId)}/peaks`}
        newPeaks={`${recording(comparison.newRecordingId)}/peaks`}
      />
      {players}
      {draft.mayEdit && list.edits.some(({ kind }) => kind === 'inserted') && (
        <Heard api={api} heard={heard} used={carried.fromHeard} onHeard={onHeard} />
      )}
      {points.length > 0 && <h3>Edit points</h3>}
      <ol className={styles.points}>
        {points.map((point, k) => (
          <EditPointCard
            key={point.join}
            number={k + 1}
            point={point}
            lost={point.cuts.flatMap(({ at }) => carried.cut.get(at) ?? [])}
            isHeard={point.inserted !== null && heardIn(point.inserted.new, heard ?? []).length > 0}
            needsWords={carried.needWords.some(({ startMs }) => startMs === point.inserted?.new.startMs)}
            wordsStay={point.retake !== null && wordsStay.has(point.retake.cut)}
            mayEdit={draft.mayEdit}
            sides={{
              before: (joins[point.join]?.end ?? null) !== null,
              after: (joins[point.join]?.start ?? null) !== null,
            }}
            hear={hear}
            onWordsStay={(stay) => point.retake && onWordsStay(point.retake.old.endMs, stay)}
            onMove={(side, byMs) => move(point.join, side, byMs)}
          />
        ))}
      </ol>
      {carried.clipped.length > 0 && (
        <details>
          <summary>
            {carried.clipped.length === 1
              ? 'One cue loses a part'
              : `${carried.clipped.length} cues lose a part`}{' '}
            to a cut; look at their words in the transcript
          </summary>
          <ul>
            {carried.clipped.map(({ cue, lostMs }) => (
              <li key={cue.id}>
                “{cue.text}” loses {(lostMs / 1000).toFixed(1)} s.
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
