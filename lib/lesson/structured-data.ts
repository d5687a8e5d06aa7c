/**
 * What a lesson page says to machines: schema.org terms of release 30.0, in
 * JSON-LD. Everything in it also stands on the page for people to read.
 */
import type {
  Clip,
  CorrectionComment,
  Graph,
  HowTo,
  HowToSection,
  HowToSupply,
  LearningResource,
  Thing,
  VideoObject,
} from 'schema-dts';
import { chapterSpans } from '#lib/chapters/chapter-rules.ts';
import type { Span } from '#lib/time/time.ts';
import { sizeWords } from './asked-measure.ts';
import { cautionWords } from './cautions.ts';
import { correctionsNewestFirst } from './corrections.ts';
import { isTool, quantityWord, ringFacts } from './making-words.ts';
import { PAGE_PARTS, type PageStep, pageSteps, partTitle, stepAnchor, stepSpan } from './page-steps.ts';
import type { FrozenRecording, Revision } from './revision.ts';

/** Absolute addresses of what the data speaks about. */
export interface PublicPlaces {
  readonly page: string;
  /** The workshop's page. */
  readonly shelf: string;
  readonly recording: string;
  readonly captions: string;
  readonly poster: string | null;
  /** The picture of a step. @param of id of the step */
  readonly still: (of: string) => string;
  /** The page at a moment, ms. */
  readonly pageAt: (atMs: number) => string;
}

/** `PT12M40S`: ISO 8601, whole seconds, rounded down. */
export function isoDuration(ms: number): string {
  const seconds = Math.floor(ms / 1000);
  const h = Math.floor(seconds / 3600);
  const m = Math.floor(seconds / 60) % 60;
  const s = seconds % 60;
  return `PT${h > 0 ? `${h}H` : ''}${m > 0 ? `${m}M` : ''}${s > 0 || seconds === 0 ? `${s}S` : ''}`;
}

/**
 * The graph of a revision: the lesson with its corrections, how to make the
 * piece, and the recording with its chapters as clips.
 * @param firstPublished when the lesson's first revision was, ISO 8601
 */
export function structuredData(revision: Revision, places: PublicPlaces, firstPublished: string): Graph {
  const { recording } = revision;
  const nodes: Thing[] = [
    lesson(revision, places, firstPublished),
    howTo(revision, places),
    ...(recording ? [media(recording, revision, places)] : []),
  ];
  return { '@context': 'https://schema.org', '@graph': nodes };
}

const reference = (places: PublicPlaces, name: 'lesson' | 'making' | 'recording') => ({
  '@id': `${places.page}#${name}`,
});

const described = ({ title, summary }: Revision['content']) => ({
  name: title,
  description: summary.trim() || title,
});

function lesson(revision: Revision, places: PublicPlaces, firstPublished: string): LearningResource {
  const { content, recording, cues } = revision;
  const minutes = (content.prepareMinutes ?? 0) + (content.makeMinutes ?? 0);
  const reached = [
    ...(recording && cues.length > 0 ? ['captions', 'transcript'] : []),
    ...(content.chapters.length > 0 ? ['tableOfContents'] : []),
    ...(revision.stills.length > 0 ? ['alternativeText'] : []),
  ];
  return {
    '@type': 'LearningResource',
    ...reference(places, 'lesson'),
    ...described(content),
    url: places.page,
    learningResourceType: 'lesson',
    educationalLevel: content.difficulty,
    ...(content.weave.trim() === '' ? {} : { teaches: content.weave }),
    ...(minutes > 0 ? { timeRequired: isoDuration(minutes * 60_000) } : {}),
    inLanguage: content.language,
    isAccessibleForFree: true,
    ...(reached.length > 0 ? { accessibilityFeature: reached } : {}),
    provider: { '@type': 'Organization', name: revision.workshop.name, url: places.shelf },
    datePublished: firstPublished,
    dateModified: revision.publishedAt,
    version: revision.number,
    ...(content.licence.trim() === '' ? {} : { license: { '@type': 'CreativeWork', text: content.licence } }),
    ...(places.poster === null ? {} : { image: places.poster, thumbnailUrl: places.poster }),
    hasPart: [reference(places, 'making'), ...(recording ? [reference(places, 'recording')] : [])],
    ...(content.corrections.length > 0
      ? {
          correction: correctionsNewestFirst(content.corrections).map((one) =>
            correction(one, recording, places),
          ),
        }
      : {}),
  };
}

function correction(
  { kind, wrong, right, affects, startMs, endMs }: Revision['content']['corrections'][number],
  recording: FrozenRecording | null,
  places: PublicPlaces,
): CorrectionComment {
  const span = recording && startMs !== null && endMs !== null && endMs > startMs ? { startMs, endMs } : null;
  return {
    '@type': 'CorrectionComment',
    name: kind,
    text: [`${wrong} → ${right}`, affects.trim()].filter((text) => text !== '').join('\n'),
    ...(span ? { about: clip(span, kind, places) } : {}),
  };
}

/** A span of the recording, whose address plays from its beginning. */
const clip = ({ startMs, endMs }: Span, name: string, places: PublicPlaces): Clip => ({
  '@type': 'Clip',
  name,
  startOffset: startMs / 1000,
  endOffset: endMs / 1000,
  url: places.pageAt(startMs),
});

function media(
  recording: FrozenRecording,
  { content, cues, publishedAt }: Revision,
  places: PublicPlaces,
): VideoObject {
  return {
    // A recording without a picture is an AudioObject, of which all that stands here is true as well.
    '@type': (recording.hasVideo ? 'VideoObject' : 'AudioObject') as 'VideoObject',
    ...reference(places, 'recording'),
    ...described(content),
    url: places.pageAt(0),
    uploadDate: publishedAt,
    duration: isoDuration(recording.durationMs),
    contentUrl: places.recording,
    encodingFormat: recording.mediaType,
    ...(recording.width && recording.height
      ? { width: `${recording.width}`, height: `${recording.height}` }
      : {}),
    ...(places.poster === null ? {} : { thumbnailUrl: places.poster }),
    inLanguage: content.language,
    isPartOf: reference(places, 'lesson'),
    ...(cues.length === 0
      ? {}
      : {
          caption: {
            '@type': 'MediaObject',
            contentUrl: places.captions,
            encodingFormat: 'text/vtt',
            inLanguage: content.language,
          },
          transcript: cues.map(({ text }) => text).join('\n'),
        }),
    hasPart: chapterSpans(content.chapters, recording.durationMs).map((chapter) =>
      clip({ startMs: chapter.startMs, endMs: chapter.endMs ?? recording.durationMs }, chapter.title, places),
    ),
  };
}

function howTo(revision: Revision, places: PublicPlaces): HowTo {
  const { content, recording } = revision;
  const steps = pageSteps(content);
  const { prepareMinutes, makeMinutes } = content;
  const minutes = (prepareMinutes ?? 0) + (makeMinutes ?? 0);
  const lasts = (name: string, of: number | null) => (of ? { [name]: isoDuration(of * 60_000) } : {});
  return {
    '@type': 'HowTo',
    ...reference(places, 'making'),
    ...described(content),
    inLanguage: content.language,
    isPartOf: reference(places, 'lesson'),
    ...lasts('prepTime', prepareMinutes),
    ...lasts('performTime', makeMinutes),
    ...lasts('totalTime', minutes),
    ...(recording ? { video: reference(places, 'recording') } : {}),
    supply: supplies(revision),
    tool: content.materials.filter(isTool).map((item) => ({ '@type': 'HowToTool', name: item.name })),
    step: [
      ...takeCare(content),
      ...PAGE_PARTS.filter((part) => steps.some((step) => step.part === part)).map((part) => ({
        '@type': 'HowToSection' as const,
        name: partTitle(part, steps),
        itemListElement: steps
          .filter((step) => step.part === part)
          .map((step) => ({
            '@type': 'HowToStep' as const,
            position: step.number,
            text: step.sentence,
            url: `${places.page}#${stepAnchor(step)}`,
            ...(revision.stills.some(({ of }) => of === step.id) ? { image: places.still(step.id) } : {}),
            ...shownIn(step, steps, revision, places),
          })),
      })),
    ],
  };
}

/** Cautions, before any step: a tip is what schema.org has for what should not be done. */
const takeCare = ({ cautions }: Revision['content']): readonly HowToSection[] =>
  cautions.length === 0
    ? []
    : [
        {
          '@type': 'HowToSection',
          name: 'Take care',
          itemListElement: cautions.map((caution) => {
            const { title, text } = cautionWords(caution);
            return { '@type': 'HowToTip' as const, ...(title === '' ? {} : { name: title }), text };
          }),
        },
      ];

function shownIn(
  step: PageStep,
  steps: readonly PageStep[],
  { content, recording }: Revision,
  places: PublicPlaces,
): { video?: Clip } {
  const span = recording && stepSpan(step, steps, content.chapters, recording.durationMs);
  return span ? { video: clip(span, `${partTitle(step.part, steps)}, step ${step.number}`, places) } : {};
}

/** Rings with their number in each size's kit, and what else is built in. */
const supplies = ({ content, kits }: Revision): readonly HowToSupply[] => [
  ...content.ringKinds.map((kind) => {
    const counts = kits.flatMap((kit) => {
      const size = content.sizes.find(({ id }) => id === kit.size);
      const issued = kit.rings.find(({ ringKind }) => ringKind === kind.id)?.issued;
      return size && issued !== undefined ? [`${issued} for ${sizeWords(size)}`] : [];
    });
    return {
      '@type': 'HowToSupply' as const,
      name: kind.name,
      description: ringFacts(kind),
      ...(counts.length > 0 ? { requiredQuantity: counts.join('; ') } : {}),
    };
  }),
  ...content.materials
    .filter((item) => !isTool(item))
    .map((item) => ({
      '@type': 'HowToSupply' as const,
      name: item.name,
      requiredQuantity: quantityWord(item.quantityMilli, item.unit),
    })),
];

/** JSON that can stand inside a script element: no `<` in it can close the element. */
export const jsonForScript = (data: unknown): string =>
  JSON.stringify(data)
    .replaceAll('<', '\\u003c')
    .replaceAll('\u2028', '\\u2028')
    .replaceAll('\u2029', '\\u2029');
