'use client';
/** The edit list as it is seen: the pairing drawn, the edit points, and what they do to what was written. */
import { useMemo, useState } from 'react';
import {
  capital,
  carriedWords,
  RE_EDITED,
  type RecordingNames,
  speedWords,
} from '#app/words/recording-change-words.ts';
import type { Comparison } from '#lib/data/comparisons.ts';
import type { Draft } from '#lib/lesson/change.ts';
import { adjustJoin, joinsOf } from '#lib/retiming/adjust.ts';
import { type CutItem, carryOver } from '#lib/retiming/carry-over.ts';
import type { EditList } from '#lib/retiming/edit-list.ts';
import { editPointsOf } from '#lib/retiming/edit-points.ts';
import { retakesIn } from '#lib/retiming/retakes.ts';
import { heardIn } from '#lib/retiming/said-again.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { EditPointCard } from './edit-point.client.tsx';
import { Heard } from './heard.client.tsx';
import { useHearing } from './hearing.client.tsx';
import styles from './new-recording.module.css';
import { Pairing } from './pairing.client.tsx';

/** The edit list as the person leaves it, and the cuts whose words stay with what was said again there. */
export function useEdits(found: EditList | null) {
  const [list, setList] = useState(found);
  // Retakes by the moment at which their cut ends: places in the list change when points are moved.
  const [wordsOut, setWordsOut] = useState<ReadonlySet<number>>(new Set());
  const stays = useMemo(
    () =>
      list
        ? retakesIn(list)
            .filter(({ old }) => !wordsOut.has(old.endMs))
            .map(({ cut }) => cut)
        : [],
    [list, wordsOut],
  );
  const wordsStay = useMemo(() => new Set(stays), [stays]);
  const onWordsStay = (endMs: number, stay: boolean) => {
    const next = new Set(wordsOut);
    if (stay) next.delete(endMs);
    else next.add(endMs);
    setWordsOut(next);
  };
  return { list, setList, stays, wordsStay, onWordsStay };
}

interface EditsProps {
  readonly comparison: Comparison;
  /** What stands at times of the old recording. */
  readonly draft: Draft;
  /** Of the routes of the lesson whose recording the old one is. */
  readonly oldApi: string;
  readonly names: RecordingNames;
  readonly lostWords: (item: CutItem) => string;
  readonly mayEdit: boolean;
  readonly list: EditList;
  readonly wordsStay: ReadonlySet<number>;
  readonly api: string;
  readonly heard: readonly Cue[] | null;
  /** Null where no transcript of the new recording can be brought. */
  readonly onHeard: ((heard: readonly Cue[] | null) => void) | null;
  readonly onList: (list: EditList) => void;
  readonly onWordsStay: (cutEndMs: number, stay: boolean) => void;
}

export function Edits(props: EditsProps) {
  const { comparison, draft, names, mayEdit, list, wordsStay, api, heard, onHeard, onList, onWordsStay } =
    props;
  const old = `${props.oldApi}/recordings/${comparison.oldRecordingId}`;
  const fresh = `${api}/recordings/${comparison.newRecordingId}`;
  const { hear, players } = useHearing(`${old}/media`, `${fresh}/media`, names);
  const points = useMemo(() => editPointsOf(list), [list]);
  const carried = useMemo(
    () => carryOver(draft, list, { wordsStay, heard: heard ?? [] }),
    [draft, list, wordsStay, heard],
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
  const speed = speedWords(list, names);
  return (
    <>
      <p>
        {points.length === 0
          ? `${capital(names.new)} sounds like ${names.old} from beginning to end.`
          : `${capital(names.new)} ${names === RE_EDITED ? 'was edited' : `differs from ${names.old}`} at ${points.length === 1 ? 'one point' : `${points.length} points`}.`}{' '}
        {carriedWords(carried.carried)} go with their sound. Look at the points below, then decide.
      </p>
      {speed && <p className="notice caution">{speed}</p>}
      <Pairing
        list={list}
        points={points}
        oldPeaks={`${old}/peaks`}
        newPeaks={`${fresh}/peaks`}
        names={names}
      />
      {players}
      {mayEdit && onHeard && list.edits.some(({ kind }) => kind === 'inserted') && (
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
            mayEdit={mayEdit}
            names={names}
            lostWords={props.lostWords}
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
