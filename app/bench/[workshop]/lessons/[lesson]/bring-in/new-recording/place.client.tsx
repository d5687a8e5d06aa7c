'use client';
/** The transcript of another lesson, placed on this lesson's recording by its sound: looked at, then taken or not. */
import { useEffect, useMemo, useState } from 'react';
import { decideFaultWords, leftOutWords, placedFrom } from '#app/words/recording-change-words.ts';
import type { OtherTranscript } from '#lib/bench/place-other-transcript.ts';
import type { Comparison } from '#lib/data/comparisons.ts';
import { applyChange, type Change } from '#lib/lesson/change.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { carryOver } from '#lib/retiming/carry-over.ts';
import type { EditList } from '#lib/retiming/edit-list.ts';
import { useDraft } from '../../draft.client.tsx';
import type { Decided } from './decide.client.tsx';
import { Edits, useEdits } from './edits.client.tsx';
import styles from './new-recording.module.css';
import { sendDecision } from './send-decision.ts';

interface PlaceProps {
  readonly comparison: Comparison & { readonly fromLessonId: string };
  readonly list: EditList | null;
  readonly api: string;
  readonly onDecided: (decided: Decided) => void;
}

/** Reads the other lesson's transcript as it is now, then shows what becomes of it here. */
export function Place(props: PlaceProps) {
  const { comparison, api } = props;
  const [other, setOther] = useState<OtherTranscript | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const address = `${api}/comparison/${comparison.id}/transcript`;
  useEffect(() => {
    let gone = false;
    const read = async () => {
      const response = await fetch(address);
      const answer = await response.json();
      if (gone) return;
      if (response.ok) setOther(answer);
      else setFault(answer.fault?.code ?? 'no-answer');
    };
    read().catch(() => setFault('no-answer'));
    return () => {
      gone = true;
    };
  }, [address]);
  if (fault !== null)
    return (
      <>
        <p className="notice alarm" role="alert">
          {decideFaultWords(fault)}
        </p>
        <DoWithout {...props} />
      </>
    );
  if (!other) return <p>Looking what is there…</p>;
  return props.list ? (
    <Placing {...props} list={props.list} other={other} />
  ) : (
    <>
      <p className="notice caution">
        The sounds of the two recordings could not be compared, so the transcript cannot be placed by them.
      </p>
      <DoWithout {...props} />
    </>
  );
}

function Placing({
  comparison,
  list: found,
  other,
  api,
  onDecided,
}: PlaceProps & { readonly list: EditList; readonly other: OtherTranscript }) {
  const draft = useDraft();
  const { list, setList, wordsStay, onWordsStay } = useEdits(found);
  const [withChapters, setWithChapters] = useState(draft.content.chapters.length === 0);
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const names = useMemo(() => placedFrom(other.title), [other.title]);
  const lesson = useMemo(
    () => ({
      content: { ...emptyContent('', 'en', 'EUR'), chapters: withChapters ? other.chapters : [] },
      cues: other.cues,
    }),
    [other, withChapters],
  );
  const placed = useMemo(
    () => carryOver(lesson, list ?? found, { wordsStay }).changes.reduce(applyChange, lesson),
    [lesson, list, found, wordsStay],
  );
  if (!list) return null;

  const place = async () => {
    if (busy) return;
    setBusy(true);
    setFault(null);
    draft.change(replacing(draft, placed, withChapters), `placing the transcript of ${other.title}`);
    // What is placed is in the draft; should this get lost, the comparison waits on and can be ended again.
    const code = await sendDecision(`${api}/comparison/${comparison.id}`, 'placed', null);
    setBusy(false);
    if (code) return setFault(code);
    onDecided('placed');
  };
  const count = placed.cues.length.toLocaleString('en');
  return (
    <>
      <Edits
        comparison={comparison}
        draft={lesson}
        oldApi={api.replace(/[^/]*$/, encodeURIComponent(comparison.fromLessonId))}
        names={names}
        lostWords={leftOutWords}
        mayEdit={draft.mayEdit}
        list={list}
        wordsStay={wordsStay}
        api={api}
        heard={null}
        onHeard={null}
        onList={setList}
        onWordsStay={onWordsStay}
      />
      {placed.cues.length === 0 && (
        <p className="notice caution">Nothing that was written there is heard in this lesson’s recording.</p>
      )}
      {draft.mayEdit ? (
        <section aria-label="Decide" className={styles.decide}>
          {other.chapters.length > 0 && (
            <label className="tick">
              <input
                type="checkbox"
                checked={withChapters}
                onChange={(event) => setWithChapters(event.target.checked)}
              />
              Take its chapters too
              {draft.content.chapters.length > 0 && ', in the place of those that this lesson has'}
            </label>
          )}
          {placed.cues.length > 0 && (
            <button
              type="button"
              disabled={draft.saveState !== 'saved' && !busy}
              aria-disabled={busy}
              onClick={() => void place()}
            >
              {draft.cues.length === 0
                ? `Take ${placed.cues.length === 1 ? 'this cue' : `these ${count} cues`}`
                : `Replace this lesson’s ${draft.cues.length === 1 ? 'one cue' : `${draft.cues.length.toLocaleString('en')} cues`} by these ${count}`}
            </button>
          )}
          <DoWithout comparison={comparison} list={list} api={api} onDecided={onDecided} />
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

/** The changes that put what was placed where the lesson's own stood. */
function replacing(
  { content, cues }: Pick<ReturnType<typeof useDraft>, 'content' | 'cues'>,
  placed: Pick<ReturnType<typeof useDraft>, 'content' | 'cues'>,
  withChapters: boolean,
): Change[] {
  const put = new Set(placed.cues.map(({ id }) => id));
  const remove = cues.filter(({ id }) => !put.has(id)).map(({ id }) => id);
  const words: Change = { kind: 'cues', put: [...placed.cues], remove };
  if (!withChapters) return [words];
  return [
    words,
    ...content.chapters.map(({ id }): Change => ({ kind: 'remove', list: 'chapters', id })),
    ...placed.content.chapters.map(
      (item, index): Change => ({ kind: 'put', list: 'chapters', item: { ...item }, index }),
    ),
  ];
}

function DoWithout({ comparison, api, onDecided }: PlaceProps) {
  const { mayEdit } = useDraft();
  const [fault, setFault] = useState<string | null>(null);
  const refuse = async () => {
    const code = await sendDecision(`${api}/comparison/${comparison.id}`, 'refuse', null);
    if (code) setFault(code);
    else onDecided('refuse');
  };
  if (!mayEdit) return null;
  return (
    <>
      <button type="button" className="quiet" onClick={() => void refuse()}>
        Do without this transcript
      </button>
      {fault !== null && (
        <p className="notice alarm" role="alert">
          {decideFaultWords(fault)}
        </p>
      )}
    </>
  );
}
