'use client';
/** The making of a lesson, section by section, with a way to jump between them. */
import type { ReactNode } from 'react';
import { useDraft } from '../draft.client.tsx';
import { Cautions } from './cautions.client.tsx';
import { LessonFacts } from './lesson-facts.client.tsx';
import styles from './making.module.css';
import { Materials } from './materials.client.tsx';
import { PlayerAround } from './player.client.tsx';
import { RingKinds } from './ring-kinds.client.tsx';
import { SampleAndRules } from './sample-and-rules.client.tsx';
import { RingSequence } from './sequence.client.tsx';
import { Sizes } from './sizes.client.tsx';
import { Links, Steps } from './steps.client.tsx';

export interface MakingProps {
  readonly lessonId: string;
  /** Address of the recording's files; null without a recording. */
  readonly recordingAddress: string | null;
  /** Where pictures of the sequence are asked for. */
  readonly picturesAddress: string;
}

export function Making({ lessonId, recordingAddress, picturesAddress }: MakingProps) {
  const { content, mayEdit } = useDraft();
  const placed = content.start.length + content.repeat.length + content.finishing.length;
  const hasRings = placed > 0 || content.ringKinds.length > 0;
  const sections: readonly (readonly [string, string, number | null])[] = [
    ['facts', 'The lesson', null],
    ['ring-kinds', 'Ring kinds', content.ringKinds.length],
    ['sequence', 'Ring sequence', placed],
    ['steps', hasRings ? 'Other steps' : 'Steps', content.steps.length],
    ['sample', 'Sample and rules', null],
    ['sizes', 'Sizes', content.sizes.length],
    ['materials', 'Materials and tools', content.materials.length],
    ['cautions', 'Cautions', content.cautions.length],
    ['links', 'Links', content.links.length],
  ];
  return (
    <main className={`page ${styles.making}`}>
      <nav aria-label="Parts of the making" className={styles.contents}>
        <ul>
          {sections.map(([id, title, count]) => (
            <li key={id}>
              <a href={`#${id}`}>
                {title}
                {count !== null && <span className="soft"> {count}</span>}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <fieldset className={styles.bare} disabled={!mayEdit}>
        <legend className="unseen">The making</legend>
        <Section id="facts" title="The lesson">
          <LessonFacts lessonId={lessonId} />
        </Section>
        <Section id="ring-kinds" title="Ring kinds">
          <RingKinds lessonId={lessonId} />
        </Section>
        <PlayerAround address={recordingAddress}>
          <Section id="sequence" title="Ring sequence">
            <RingSequence lessonId={lessonId} picturesAddress={picturesAddress} />
          </Section>
          <Section id="steps" title={hasRings ? 'Steps that add no rings' : 'Steps'}>
            <Steps lessonId={lessonId} />
          </Section>
        </PlayerAround>
        <Section id="sample" title="Sample and rules">
          <SampleAndRules lessonId={lessonId} />
        </Section>
        <Section id="sizes" title="Sizes">
          <Sizes lessonId={lessonId} />
        </Section>
        <Section id="materials" title="Materials and tools">
          <Materials lessonId={lessonId} />
        </Section>
        <Section id="cautions" title="Cautions">
          <Cautions />
        </Section>
        <Section id="links" title="Links">
          <Links lessonId={lessonId} />
        </Section>
      </fieldset>
    </main>
  );
}

function Section({ id, title, children }: { id: string; title: string; children: ReactNode }) {
  return (
    <section className="panel" id={id} aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{title}</h2>
      {children}
    </section>
  );
}
