/** The front page: what this is, for whom, and the way in. */
import Link from 'next/link';
import { connection } from 'next/server';
import { openBench } from '#lib/bench/bench.ts';
import { DEMO_LESSON_SLUG, DEMO_WORKSHOP_SLUG } from '#lib/bench/demo-workshop.ts';
import { findFrontDoor } from '#lib/data/front-door.ts';
import styles from './front-page.module.css';
import { Mark } from './mark.tsx';

const DEMO_PATH = `/workshop/${DEMO_WORKSHOP_SLUG}/lesson/${DEMO_LESSON_SLUG}`;

export default async function FrontPage() {
  await connection();
  const { isFounded, demoIsPublished } = await findFrontDoor(openBench().db, {
    workshop: DEMO_WORKSHOP_SLUG,
    lesson: DEMO_LESSON_SLUG,
  });
  return (
    <>
      <header className={styles['top']}>
        <span className={styles['name']}>
          <Mark />
          Benchleaf
        </span>
        {isFounded && (
          <Link className="button quiet" href="/sign-in">
            Sign in
          </Link>
        )}
      </header>
      <main>
        <section className={styles['lead']}>
          <img
            className={styles['chain']}
            src="/byzantine.svg"
            width={765}
            height={172}
            alt="A byzantine chain: copper rings in pairs, and between them blue rings folded back over each other."
          />
          <h1>Your recording, turned into a lesson that can be followed to the last ring</h1>
          <p className={styles['say']}>
            Benchleaf is for teachers of jump-ring weaving. You bring the recording of a lesson and its
            transcript; it helps you give your pupils everything else they need.
          </p>
          <p className="row">
            {demoIsPublished && (
              <Link className="button" href={DEMO_PATH}>
                Read the demo lesson
              </Link>
            )}
            {isFounded && (
              <Link className="button quiet" href="/bench">
                To the bench
              </Link>
            )}
          </p>
          {!demoIsPublished && !isFounded && (
            <p className="soft">The demo lesson is being laid out. Load this page again in a minute.</p>
          )}
        </section>
        {!isFounded && (
          <section className={`notice ${styles['first']}`}>
            <h2>Nobody teaches here yet</h2>
            <p>
              Look at the terminal in which Benchleaf was started: it printed an address that can be opened
              once. It makes you the owner of the first workshop.
            </p>
          </section>
        )}
        <section className={styles['parts']} aria-labelledby="what-it-does">
          <h2 id="what-it-does">What it does for you</h2>
          <ol>
            <li>
              <h3>Finds the way through the recording</h3>
              <p>
                Mend what the transcript misheard, set chapters where they begin, and let pupils go straight
                to the repeat unit.
              </p>
            </li>
            <li>
              <h3>Counts the rings</h3>
              <p>
                Describe the making once. The kit list for every size follows from it: opened, closed, spare,
                packs, mass and cost, each number with its working.
              </p>
            </li>
            <li>
              <h3>Publishes a page to weave from</h3>
              <p>
                Steps with pictures, captions, kit, cautions and the full text; on a phone at the bench, on
                paper, or read aloud.
              </p>
            </li>
            <li>
              <h3>Puts mistakes right in the open</h3>
              <p>
                Say once what was wrong and what is right. The page, the captions and the kit follow, and
                whoever holds an older kit sees what changes.
              </p>
            </li>
          </ol>
        </section>
      </main>
    </>
  );
}
