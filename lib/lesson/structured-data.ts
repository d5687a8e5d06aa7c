/**
 * What a lesson page says to machines: schema.org terms of release 30.0, in
 * JSON-LD. Everything in it also stands on the page for people to read.
 */
import { chapterSpans } from '#lib/chapters/chapter-rules.ts';
import { isTool, quantityWord } from './making-words.ts';
import { PAGE_PARTS, PART_TITLES, pageSteps } from './page-steps.ts';
import type { Revision } from './revision.ts';

/** Absolute addresses of what the data speaks about. */
export interface PublicPlaces {
  readonly page: string;
  readonly recording: string;
  readonly poster: string | null;
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

/** The graph of a revision: the video with its chapters as clips, and how to make the piece. */
export function structuredData(revision: Revision, places: PublicPlaces): Record<string, unknown> {
  return {
    '@context': 'https://schema.org',
    '@graph': [video(revision, places), howTo(revision, places)].filter((node) => node !== null),
  };
}

function video(revision: Revision, places: PublicPlaces): Record<string, unknown> | null {
  const { recording, content } = revision;
  if (!recording) return null;
  return {
    '@type': recording.hasVideo ? 'VideoObject' : 'AudioObject',
    '@id': `${places.page}#recording`,
    name: content.title,
    description: content.summary || content.title,
    uploadDate: revision.publishedAt,
    duration: isoDuration(recording.durationMs),
    contentUrl: places.recording,
    ...(places.poster === null ? {} : { thumbnailUrl: places.poster }),
    inLanguage: content.language,
    hasPart: chapterSpans(content.chapters, recording.durationMs).map((chapter) => ({
      '@type': 'Clip',
      name: chapter.title,
      startOffset: chapter.startMs / 1000,
      endOffset: (chapter.endMs ?? recording.durationMs) / 1000,
      url: places.pageAt(chapter.startMs),
    })),
  };
}

function howTo(revision: Revision, places: PublicPlaces): Record<string, unknown> {
  const { content } = revision;
  const steps = pageSteps(content);
  const minutes = (content.prepareMinutes ?? 0) + (content.makeMinutes ?? 0);
  return {
    '@type': 'HowTo',
    '@id': `${places.page}#lesson`,
    url: places.page,
    name: content.title,
    description: content.summary || content.title,
    inLanguage: content.language,
    dateModified: revision.publishedAt,
    version: revision.number,
    ...(minutes > 0 ? { totalTime: isoDuration(minutes * 60_000) } : {}),
    ...(revision.recording ? { video: { '@id': `${places.page}#recording` } } : {}),
    supply: [
      ...content.ringKinds.map((kind) => ({ '@type': 'HowToSupply', name: kind.name })),
      ...content.materials
        .filter((item) => !isTool(item))
        .map((item) => ({
          '@type': 'HowToSupply',
          name: item.name,
          requiredQuantity: quantityWord(item.quantityMilli, item.unit),
        })),
    ],
    tool: content.materials.filter(isTool).map((item) => ({ '@type': 'HowToTool', name: item.name })),
    step: PAGE_PARTS.filter((part) => steps.some((step) => step.part === part)).map((part) => ({
      '@type': 'HowToSection',
      name: PART_TITLES[part],
      itemListElement: steps
        .filter((step) => step.part === part)
        .map((step) => ({ '@type': 'HowToStep', position: step.number, text: step.sentence })),
    })),
    ...(content.corrections.length > 0
      ? {
          correction: content.corrections.map((correction) => ({
            '@type': 'CorrectionComment',
            text: `${correction.wrong} → ${correction.right}`,
          })),
        }
      : {}),
  };
}

/** JSON that can stand inside a script element: no `<` in it can close the element. */
export const jsonForScript = (data: unknown): string =>
  JSON.stringify(data)
    .replaceAll('<', '\\u003c')
    .replaceAll('\u2028', '\\u2028')
    .replaceAll('\u2029', '\\u2029');
