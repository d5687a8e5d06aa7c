'use client';
/** The recording of a lesson: bring one in, watch it being taken, see what it is, replace it. */
import { useCallback, useMemo, useState } from 'react';
import type { ShownRecording, ShownRecordings } from '#app/http/present-recording.ts';
import { TAKEN_WORDS } from '#app/words/recording-words.ts';
import styles from './bring-in.module.css';
import { CurrentRecordingView } from './current-recording.client.tsx';
import { DropZone } from './drop-zone.client.tsx';
import { type Compared, useComparison } from './new-recording/comparison-feed.ts';
import { NewRecordingNotice } from './new-recording/notice.client.tsx';
import { useRecordings } from './recordings-feed.ts';
import { SendingFile } from './sending.client.tsx';
import { Refused, UnderWay, Unfinished } from './under-way.client.tsx';

interface RecordingPartProps {
  readonly workshop: string;
  readonly lesson: string;
  readonly mayEdit: boolean;
  readonly largestBytes: number;
  /** As the server had them when it wrote the page: all is there at once, and nothing moves away under a press. */
  readonly first: { readonly recordings: ShownRecordings; readonly compared: Compared };
}

export function RecordingPart({ workshop, lesson, mayEdit, largestBytes, first }: RecordingPartProps) {
  const base = `/api/workshops/${encodeURIComponent(workshop)}/lessons/${encodeURIComponent(lesson)}`;
  const bench = `/bench/${encodeURIComponent(workshop)}/lessons/${encodeURIComponent(lesson)}`;
  const feed = useRecordings(base, first.recordings);
  const { refresh } = feed;
  // A recording that was taken in may be one to decide about.
  const states = feed.now.recordings.map(({ id, state }) => `${id} ${state}`).join();
  const compared = useComparison(base, states, first.compared);
  const unreachable = feed.unreachable || compared.unreachable;
  const [file, setFile] = useState<File | null>(null);
  const [spoken, setSpoken] = useState('');
  const to = useMemo(() => ({ workshop, lesson }), [workshop, lesson]);
  const drop = useCallback(() => {
    setFile(null);
    void refresh();
  }, [refresh]);
  const { recordings } = feed.now;
  const current = recordings.find(({ id }) => id === feed.now.current) ?? null;
  const others = recordings.filter((recording) => recording !== current);
  const isTaken = recordings.some(({ state }) => state === 'waiting' || state === 'ingesting');
  const act = async (recording: ShownRecording, what: 'cancel' | 'retry' | 'remove'): Promise<void> => {
    const address = `${base}/recordings/${recording.id}`;
    if (what === 'remove' && recording.state === 'receiving') {
      await fetch(`/api/uploads/${recording.id}`, {
        method: 'DELETE',
        headers: { 'tus-resumable': '1.0.0' },
      });
    } else if (what === 'remove') {
      await fetch(address, { method: 'DELETE' });
    } else {
      await fetch(`${address}/${what}`, { method: 'POST' });
    }
    await refresh();
  };

  return (
    <section id="recording" aria-labelledby="recording-title" className={styles.part}>
      <h2 id="recording-title">Recording</h2>
      <p className="unseen" role="status">
        {spoken}
      </p>
      {unreachable && <p className="fault">The server cannot be reached at the moment. Trying again…</p>}
      {current && (
        <CurrentRecordingView
          key={current.id}
          base={`${base}/recordings/${current.id}`}
          recording={current}
          mayEdit={mayEdit}
          announce={setSpoken}
          refresh={refresh}
        />
      )}
      <NewRecordingNotice
        api={base}
        bench={bench}
        recordings={recordings}
        feed={compared}
        onTakenBack={() => void Promise.all([refresh(), compared.look()])}
      />
      {others.map((recording) => (
        <OtherRecording
          key={recording.id}
          recording={recording}
          mayEdit={mayEdit}
          isSending={file !== null}
          announce={setSpoken}
          act={act}
        />
      ))}
      {file && (
        <SendingFile
          key={`${file.name} ${file.size} ${file.lastModified}`}
          file={file}
          to={to}
          largestBytes={largestBytes}
          onSent={drop}
          onDropped={drop}
          announce={setSpoken}
        />
      )}
      {mayEdit && !file && !isTaken && (
        <DropZone
          onFile={setFile}
          label={current ? 'Replace by another recording' : 'Bring in the recording'}
        >
          {current && (
            <p>
              A re-edited recording is compared with this one by its sound, so that chapters, cues, steps and
              corrections can move with it; you decide before anything moves. Published revisions keep the
              recording they have.
            </p>
          )}
          <p className="hint">{TAKEN_WORDS}.</p>
        </DropZone>
      )}
      {!mayEdit && !current && <p>There is no recording yet.</p>}
    </section>
  );
}

interface OtherRecordingProps {
  readonly recording: ShownRecording;
  readonly mayEdit: boolean;
  readonly isSending: boolean;
  readonly announce: (text: string) => void;
  readonly act: (recording: ShownRecording, what: 'cancel' | 'retry' | 'remove') => Promise<void>;
}

function OtherRecording({ recording, mayEdit, isSending, announce, act }: OtherRecordingProps) {
  switch (recording.state) {
    case 'receiving':
      // While this window sends, its own progress is shown instead.
      return isSending ? null : (
        <Unfinished recording={recording} mayEdit={mayEdit} onRemove={() => act(recording, 'remove')} />
      );
    case 'waiting':
    case 'ingesting':
      return (
        <UnderWay
          recording={recording}
          mayEdit={mayEdit}
          announce={announce}
          onCancel={() => act(recording, 'cancel')}
        />
      );
    case 'refused':
    case 'cancelled':
      return (
        <Refused
          recording={recording}
          mayEdit={mayEdit}
          onRetry={() => act(recording, 'retry')}
          onRemove={() => act(recording, 'remove')}
        />
      );
    case 'ready':
      return null;
  }
}
