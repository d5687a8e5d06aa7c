'use client';

import { type ReactNode, useMemo } from 'react';
import { contradictionWords, unsaidWords } from '#app/words/misheard-words.ts';
import type { DescriptionSetup } from '#lib/description/description-setup.ts';
import { saidAloud, spokenFindings } from '#lib/facts/spoken-findings.ts';
import { missingFrom } from '#lib/lesson/missing.ts';
import { useDraft } from '../draft.client.tsx';
import styles from './check.module.css';
import { type Copied, Description } from './description.client.tsx';
import { DraftFiles } from './draft-files.client.tsx';
import { FindingList } from './finding-list.client.tsx';
import { Publish } from './publish.client.tsx';
import { SaidAloud } from './said-aloud.client.tsx';

interface CheckProps {
  /** Address of the lesson on the bench. */
  readonly bench: string;
  readonly api: string;
  readonly preview: string;
  /** Where the lesson page is, or will be; whole, for the description text. */
  readonly lessonAddress: string;
  readonly lessonPath: string;
  /** How the workshop words its description texts, and where it does; null for members who may not. */
  readonly setup: DescriptionSetup;
  readonly setupPath: string | null;
  /** The description texts as they were last taken along. */
  readonly copied: Copied;
  readonly recording: {
    readonly durationMs: number;
    readonly hasAudio: boolean;
    readonly hasVideo: boolean;
  } | null;
  /** Number of the latest revision, or null. */
  readonly published: number | null;
  /** Where to paste again; stands under publishing. */
  readonly children: ReactNode;
}

const SPOKEN_NAMES = { contradiction: contradictionWords, unsaid: unsaidWords };

export function Check(props: CheckProps) {
  const { bench, recording, api } = props;
  const draft = useDraft();
  const { content, cues, mayEdit } = draft;
  const said = useMemo(() => saidAloud(cues, content), [cues, content]);
  const missing = useMemo(
    () => missingFrom({ content, cues, recording, more: spokenFindings(said, content, SPOKEN_NAMES) }),
    [content, cues, recording, said],
  );
  const putAside = (keys: readonly string[], label: string) =>
    draft.change([{ kind: 'set', field: 'dismissed', value: keys }], label);
  return (
    <div className={styles.columns}>
      <div>
        <section className="panel" aria-labelledby="missing-title">
          <h2 id="missing-title">What a pupil would still have to ask</h2>
          <FindingList
            missing={missing}
            bench={bench}
            mayEdit={mayEdit}
            dismissed={content.dismissed}
            onPutAside={putAside}
          />
        </section>
        <SaidAloud said={said} bench={bench} />
        <section className="panel" aria-labelledby="text-title">
          <h2 id="text-title">Description text</h2>
          <p className="soft">For wherever the recording is hosted. It follows the draft.</p>
          <Description
            content={content}
            setup={props.setup}
            lessonAddress={props.lessonAddress}
            durationMs={recording?.durationMs ?? null}
            copied={props.copied}
            api={api}
            mayEdit={mayEdit}
            setupPath={props.setupPath}
          />
        </section>
      </div>
      <div>
        <section className="panel" aria-labelledby="publish-title">
          <h2 id="publish-title">Publish</h2>
          <Publish
            api={api}
            preview={props.preview}
            lessonPath={props.lessonPath}
            firstPublished={props.published}
            blocked={missing.blocks.length > 0}
            corrections={content.corrections.filter((correction) => correction.revision === null).length}
          />
        </section>
        {props.children}
        <section className="panel" aria-labelledby="files-title">
          <h2 id="files-title">Files of the draft</h2>
          <DraftFiles api={api} draft={draft} published={props.published !== null} mayEdit={mayEdit} />
        </section>
      </div>
    </div>
  );
}
