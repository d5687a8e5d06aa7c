'use client';
/** What can be taken out of the draft as files in open formats, and what each leaves out. */
import { textFileWords } from '#app/words/text-file-words.ts';
import type { DraftFile } from '#lib/description/places.ts';
import type { Draft } from '#lib/lesson/change.ts';
import type { TextFile } from '#lib/lesson/text-files.ts';
import styles from './check.module.css';
import { useTaken } from './place-buttons.client.tsx';

interface DraftFilesProps {
  /** Address of the lesson's routes. */
  readonly api: string;
  readonly draft: Draft;
  /** Whether any revision is. */
  readonly published: boolean;
  readonly mayEdit: boolean;
}

/** Places outside that a file is taken to. */
const PLACE_OF: Readonly<Partial<Record<TextFile, DraftFile>>> = {
  'captions.vtt': 'captions',
  'captions.srt': 'captions',
  'captions.ttml': 'captions',
  'chapters.vtt': 'chapters',
  'chapters.json': 'chapters',
  'chapters.ffmetadata': 'chapters',
};

export function DraftFiles({ api, draft, published, mayEdit }: DraftFilesProps) {
  const noteTaken = useTaken(api);
  const approximate = draft.cues.filter(({ timing }) => timing === 'approximate').length;
  return (
    <>
      {approximate > 0 && (
        <p className="notice caution">
          {approximate === 1 ? 'One cue has' : `${approximate} cues have`} an approximate time. The files do
          not show which.
        </p>
      )}
      <ul className={styles.files}>
        {textFileWords(draft).map(({ name, title, use, leavesOut }) => (
          <li key={name}>
            <a
              href={`${api}/exports/${name}`}
              download
              onClick={() => {
                const place = PLACE_OF[name];
                if (place && mayEdit) noteTaken(place, { draft: true });
              }}
            >
              {title}
            </a>
            <span className="hint">
              {' '}
              {use}
              {leavesOut.length > 0 && ` Leaves out ${leavesOut.join('; ')}.`}
            </span>
          </li>
        ))}
      </ul>
      <h3>Portable copy</h3>
      <p className="hint">
        All of the lesson as a zip of plain files: a page that opens from disk, the recording, captions, kits,
        every revision as data. It can be brought in again on the page of lessons, here or elsewhere.
      </p>
      <ul className={styles.files}>
        <li>
          <a href={`${api}/portable-copy`} download>
            Portable copy, with the draft
          </a>
          <span className="hint">
            {' '}
            To keep: an owner’s copy also holds batches, what pupils reported, and what was copied where.
          </span>
        </li>
        {published && (
          <li>
            <a href={`${api}/portable-copy?draft=no`} download>
              Portable copy of what is published
            </a>
            <span className="hint"> To hand on.</span>
          </li>
        )}
      </ul>
    </>
  );
}
