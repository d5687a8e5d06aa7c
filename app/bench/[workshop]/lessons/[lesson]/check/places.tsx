/** Where to paste again: what stands outside and differs from the latest revision, to be ticked off. */
import { kitAddress, lessonPath, revisionPath } from '#app/lesson-page/page-addresses.ts';
import { dayOf } from '#app/words/days.ts';
import { PLACE_WORDS, placeStateWords } from '#app/words/place-words.ts';
import {
  type BatchPlaceRead,
  batchPlace,
  type PlaceRead,
  type PlacesOf,
  readPlaces,
} from '#lib/bench/paste-again.ts';
import { database } from '#lib/data/database.ts';
import type { Place } from '#lib/description/places.ts';
import { kitsIn } from '#lib/kit/recorded-batch.ts';
import { CopyPlace, ForgetPlace, TakeLink, TickPlace } from './place-buttons.client.tsx';
import styles from './places.module.css';

interface PlacesProps extends PlacesOf {
  /** Of the lesson's routes. */
  readonly api: string;
  /** Of the lesson on the bench. */
  readonly bench: string;
  /** The lesson's slug. */
  readonly slug: string;
  readonly mayEdit: boolean;
}

export async function Places(props: PlacesProps) {
  const { api, bench, workshop, slug, mayEdit } = props;
  const read = await readPlaces(database(), props);
  if (!read) return null;
  const { latest, places, batches } = read;
  const known = places.filter(({ state }) => state.is !== 'unknown');
  const unknown = places.filter(({ state }) => state.is === 'unknown');
  const stale = known.filter(isStale).length + batches.filter((one) => one.stale).length;
  const row = { api, latest, mayEdit, files: revisionPath(workshop, slug, latest) };
  return (
    <section id="paste-again" className="panel" aria-labelledby="places-title">
      <h2 id="places-title">Where to paste again</h2>
      <p className={stale > 0 ? 'notice caution' : 'soft'}>
        {stale > 0
          ? `${stale === 1 ? 'One place' : `${stale} places`} outside ${stale === 1 ? 'does' : 'do'} not show revision ${latest}.`
          : known.length + batches.length === 0
            ? 'Note here where this lesson stands outside, and every later revision tells you what to renew.'
            : `All that is noted shows revision ${latest}, or is the same in it.`}
      </p>
      {mayEdit && (
        <p className="hint">
          What you copy or take on this screen is noted by itself. What you take from the lesson page is not,
          as pupils take it there too: tick it here.
        </p>
      )}
      <ul className={styles.places}>
        {known.filter(isStale).map((place) => (
          <PlaceRow key={place.place} {...place} {...row} />
        ))}
        {batches.toSorted(staleFirst).map((batch) => (
          <BatchRow
            key={batch.batch.id}
            {...batch}
            {...row}
            bench={bench}
            page={lessonPath(workshop, slug)}
          />
        ))}
        {known
          .filter((place) => !isStale(place))
          .map((place) => (
            <PlaceRow key={place.place} {...place} {...row} />
          ))}
      </ul>
      {unknown.length === 0 ? null : (
        <details className={styles.more}>
          <summary>{known.length === 0 ? 'Places that a lesson may stand in' : 'Further places'}</summary>
          <ul className={styles.places}>
            {unknown.map((place) => (
              <PlaceRow key={place.place} {...place} {...row} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

const isStale = ({ state }: PlaceRead): boolean => state.is === 'stale';
const staleFirst = (one: BatchPlaceRead, other: BatchPlaceRead): number =>
  Number(other.stale) - Number(one.stale);

interface RowOf {
  readonly api: string;
  readonly latest: number;
  readonly mayEdit: boolean;
  /** Below it the files of the latest revision. */
  readonly files: string;
}

/** Files of a revision that belong to a place. */
const FILES: Readonly<Partial<Record<Place, readonly (readonly [file: string, words: string])[]>>> = {
  recording: [['recording', 'the recording']],
  captions: [
    ['captions.vtt', 'WebVTT'],
    ['captions.srt', 'SRT'],
  ],
  chapters: [
    ['chapters.vtt', 'WebVTT'],
    ['chapters.json', 'JSON'],
  ],
};

const COPIED: ReadonlySet<Place> = new Set<Place>([
  'title',
  'description-text',
  'description-markdown',
  'description-html',
]);

const PlaceRow = ({ place, state, now, since, api, latest, mayEdit, files }: PlaceRead & RowOf) => {
  const { name, again } = PLACE_WORDS[place];
  const to = `${api}/places/${place}`;
  const of = { to, revision: latest, name };
  return (
    <li data-state={state.is}>
      <p>
        <strong>{name}</strong>
        {since === null ? null : (
          <span className="soft">
            {' '}
            {since.revision === null
              ? COPIED.has(place)
                ? 'copied'
                : 'taken from the draft,'
              : `revision ${since.revision},`}{' '}
            {dayOf(since.at)}
          </span>
        )}
      </p>
      <p>
        {state.is === 'unknown' ? '' : placeStateWords(state)} {state.is === 'stale' ? again : ''}
      </p>
      <div className={styles.acts}>
        {COPIED.has(place) ? (
          <CopyPlace {...of} text={now} isHtml={place === 'description-html'} mayEdit={mayEdit} />
        ) : null}
        {(FILES[place] ?? []).map(([file, words]) => (
          <TakeLink key={file} {...of} href={`${files}/${file}`} words={words} mayEdit={mayEdit} />
        ))}
        {mayEdit && state.is !== 'in place' ? <TickPlace {...of} does="It is there" /> : null}
        {mayEdit && state.is !== 'unknown' ? <ForgetPlace {...of} /> : null}
      </div>
    </li>
  );
};

const BatchRow = ({
  batch,
  upTo,
  stale,
  api,
  latest,
  mayEdit,
  bench,
  page,
}: BatchPlaceRead & RowOf & { readonly bench: string; readonly page: string }) => {
  const kits = kitsIn(batch);
  const name = `${kits} ${kits === 1 ? 'kit' : 'kits'} of ${dayOf(new Date(batch.madeOn))}`;
  const [first] = batch.kits;
  return (
    <li data-state={stale ? 'stale' : 'in place'}>
      <p>
        <strong>{name}</strong> <span className="soft">revision {upTo}</span>
      </p>
      <p>
        {stale
          ? 'Their contents, labels and inserts are not right any more. Change the kits that you still have and print their papers anew; whoever holds one reads the difference under the code on its label.'
          : placeStateWords({ is: 'in place' })}
      </p>
      <div className={styles.acts}>
        <a href={`${bench}/kit#batches`}>{stale ? 'What differs, and its papers' : 'Its papers'}</a>
        {first ? <a href={kitAddress(page, batch.revision, first.bodyMm)}>What holders read</a> : null}
        {mayEdit && stale ? (
          <TickPlace
            to={`${api}/places/${batchPlace(batch.id)}`}
            revision={latest}
            name={name}
            does="It is done"
          />
        ) : null}
      </div>
    </li>
  );
};
