/**
 * Steps as annotations of the recording: W3C Web Annotation Data Model (2017),
 * each targeting its span by a media fragment (Media Fragments URI 1.0).
 */
import { writeFragment } from '#lib/time/media-fragment.ts';
import type { Span } from '#lib/time/time.ts';
import { type PageStep, pageSteps, partTitle, stepAnchor, stepSpan } from './page-steps.ts';
import type { FrozenRecording, Revision } from './revision.ts';

/** Media type of the file (Web Annotation Protocol, section 4.1). */
export const ANNOTATION_TYPE = 'application/ld+json; profile="http://www.w3.org/ns/anno.jsonld"';

/** Addresses in the file: whole ones, or relative to where it lies. */
export interface AnnotationPlaces {
  /** Of the file itself. */
  readonly file: string;
  readonly page: string;
  readonly recording: string;
  /** The picture of a step. @param of id of the step */
  readonly still: (of: string) => string;
}

/** The collection, with all annotations in its one page. The same revision gives the same bytes. */
export function writeStepAnnotations(revision: Revision, places: AnnotationPlaces): string {
  const { content, recording } = revision;
  const steps = pageSteps(content);
  const items = steps.map((step) => {
    const span = recording && stepSpan(step, steps, content.chapters, recording.durationMs);
    const target =
      recording && span ? spanTarget(span, recording, places) : `${places.page}#${stepAnchor(step)}`;
    return annotation(step, `${partTitle(step.part, steps)}, step ${step.number}`, target, revision, places);
  });
  const collection = {
    '@context': 'http://www.w3.org/ns/anno.jsonld',
    id: places.file,
    type: 'AnnotationCollection',
    label: revision.content.title,
    creator: { type: 'Organization', name: revision.workshop.name },
    created: revision.publishedAt,
    total: items.length,
    // A page holds one annotation at least (section 5.2).
    ...(items.length === 0
      ? {}
      : { first: { id: `${places.file}#page`, type: 'AnnotationPage', startIndex: 0, items } }),
  };
  return `${JSON.stringify(collection, null, 2)}\n`;
}

function annotation(
  step: PageStep,
  name: string,
  target: unknown,
  revision: Revision,
  places: AnnotationPlaces,
): object {
  const { language } = revision.content;
  const still = revision.stills.find(({ of }) => of === step.id);
  const words = { type: 'TextualBody', format: 'text/plain' };
  return {
    id: `${places.file}#step-${encodeURIComponent(step.id)}`,
    type: 'Annotation',
    motivation: 'describing',
    body: [
      { ...words, value: step.sentence, language, purpose: 'describing' },
      {
        ...words,
        value: name,
        language: 'en',
        purpose: 'tagging',
      },
      ...(still ? [{ id: places.still(step.id), type: 'Image', format: 'image/jpeg' }] : []),
    ],
    target,
  };
}

const spanTarget = (span: Span, recording: FrozenRecording, places: AnnotationPlaces): object => ({
  type: 'SpecificResource',
  source: {
    id: places.recording,
    type: recording.hasVideo ? 'Video' : 'Audio',
    format: recording.mediaType,
  },
  selector: {
    type: 'FragmentSelector',
    conformsTo: 'http://www.w3.org/TR/media-frags/',
    value: writeFragment(span),
  },
});
