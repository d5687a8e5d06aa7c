import { carriedWords, fileSizeWords, madeFileTitle } from '#app/words/made-file-words.ts';
import { revisionChangeSentence } from '#app/words/revision-change.ts';
import { textFileWords } from '#app/words/text-file-words.ts';
import { MADE_FILES, type MadeFile, type MadeFileName } from '#lib/lesson/made-files.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import type { RevisionChange } from '#lib/lesson/revision-difference.ts';
import styles from './lesson-page.module.css';
import type { PageAddresses } from './page-addresses.ts';

/** Every revision, newest first, with what changed in it (null for the first). */
export type PageHistory = readonly {
  readonly number: number;
  readonly publishedAt: Date;
  readonly changes: readonly RevisionChange[] | null;
}[];

interface PageFootProps {
  readonly revision: Revision;
  readonly madeFiles: readonly MadeFile[];
  readonly addresses: PageAddresses;
  readonly history: PageHistory;
}

const day = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' });

/** Links, what may be done with the lesson, its files and its revisions. */
export const PageFoot = ({ revision, madeFiles, addresses, history }: PageFootProps) => {
  const { content } = revision;
  return (
    <footer className={styles.foot}>
      {content.links.length === 0 ? null : (
        <>
          <h2>Links</h2>
          <ul>
            {content.links.map((link) => (
              <li key={link.id}>
                <a href={link.address} rel="noopener">
                  {link.label.trim() === '' ? link.address : link.label}
                </a>
              </li>
            ))}
          </ul>
        </>
      )}
      <div lang="en">
        <h2>About this lesson</h2>
        <p>
          Revision {revision.number}, published{' '}
          <time dateTime={revision.publishedAt}>{day.format(new Date(revision.publishedAt))}</time> by{' '}
          <a href={addresses.shelf}>{revision.workshop.name}</a>.
          {content.licence.trim() === '' ? '' : ` ${content.licence}`}
        </p>
        <h2>To take along</h2>
        <MadeFiles revision={revision} files={madeFiles} addressOf={addresses.madeFile} />
        <ul className={styles.files}>
          {textFileWords(revision)
            .filter(({ name }) => (name.startsWith('chapters') ? content.chapters : revision.cues).length > 0)
            .map(({ name, title }) => (
              <li key={name}>
                <a href={addresses.textFile(name)} download={name}>
                  {title}
                </a>
              </li>
            ))}
          {addresses.sheet === null ? null : (
            <li>
              <a href={addresses.sheet}>Sheet for the bench (PDF)</a>
            </li>
          )}
          {addresses.annotations === null || !hasSteps(content) ? null : (
            <li>
              <a href={addresses.annotations} download="steps.jsonld">
                Steps, Web Annotations
              </a>
            </li>
          )}
          {addresses.description === null ? null : (
            <li>
              <a href={addresses.description}>Description text</a>
            </li>
          )}
        </ul>
        {history.length < 2 ? null : (
          <>
            <h2>Revisions</h2>
            <ol className={styles.history} reversed>
              {history.map(({ number, publishedAt, changes }) => (
                <li key={number} value={number}>
                  {number === revision.number ? (
                    <strong>Revision {number}, this page</strong>
                  ) : (
                    <a href={addresses.revision(number)}>Revision {number}</a>
                  )}
                  , {day.format(publishedAt)}. {changes?.map(revisionChangeSentence).join(' ')}
                </li>
              ))}
            </ol>
          </>
        )}
      </div>
    </footer>
  );
};

const hasSteps = ({ start, repeat, finishing, steps }: Revision['content']): boolean =>
  start.length + repeat.length + finishing.length + steps.length > 0;

interface MadeFilesProps {
  readonly revision: Revision;
  readonly files: readonly MadeFile[];
  readonly addressOf: (name: MadeFileName) => string;
}

/** The recording with its captions and chapters inside, as soon as the worker has made it. */
const MadeFiles = ({ revision, files, addressOf }: MadeFilesProps) => {
  const copies = files.filter(({ name }) => MADE_FILES[name].startsWith('video/'));
  const ready = copies.flatMap((file) => (file.state === 'ready' ? [file] : []));
  const coming = copies.some(({ state }) => state === 'waiting' || state === 'making');
  if (ready.length === 0 && !coming) return null;
  return (
    <p>
      The recording with {carriedWords(revision)} inside, for players without this page:{' '}
      {ready.map(({ name, sizeBytes }, index) => (
        <span key={name}>
          {index === 0 ? '' : ', '}
          <a
            href={addressOf(name)}
            download={`${revision.workshop.slug}-revision-${revision.number}-${name}`}
          >
            {madeFileTitle(name)}
          </a>{' '}
          ({fileSizeWords(sizeBytes)})
        </span>
      ))}
      {coming ? (ready.length > 0 ? '; the other is still being made' : 'being made, ready in a while') : ''}.
    </p>
  );
};
