/** The files that a lesson can be taken out as: what each is for, and what it has no place for. */
import type { TextFile, TextFileSource } from '#lib/lesson/text-files.ts';

export interface TextFileWords {
  readonly name: TextFile;
  readonly title: string;
  readonly use: string;
  /** What of this lesson is not in the file; empty where all is. */
  readonly leavesOut: readonly string[];
}

/** Every file of a lesson, captions first. */
export function textFileWords({
  cues,
  content: { chapters },
}: Pick<TextFileSource, 'cues' | 'content'>): readonly TextFileWords[] {
  const placed = cues.filter(({ settings }) => settings !== '').length;
  const places = placed > 0 ? [`where ${many(placed, 'cue')} stood on the picture`] : [];
  const kinds = chapters.length > 0 ? ['kinds of chapters'] : [];
  const starts = new Set(chapters.map(({ startMs }) => startMs));
  const together = chapters.length - starts.size;
  const atOnce =
    together > 0 ? [`${many(together, 'chapter')} that begin at the same moment as another`] : [];
  return [
    { name: 'captions.vtt', title: 'Captions, WebVTT', use: 'Players in web pages.', leavesOut: [] },
    { name: 'captions.srt', title: 'Captions, SRT', use: 'Nearly every host and player.', leavesOut: places },
    {
      name: 'captions.ttml',
      title: 'Captions, TTML (IMSC text)',
      use: 'Broadcasters and archives.',
      leavesOut: places,
    },
    {
      name: 'transcript.txt',
      title: 'Transcript, plain text',
      use: 'To read and to print.',
      leavesOut: [...(cues.length > 0 ? ['parts of a second, and ends of cues'] : []), ...places],
    },
    {
      name: 'chapters.vtt',
      title: 'Chapters, WebVTT',
      use: 'Players in web pages.',
      leavesOut: [...kinds, ...atOnce],
    },
    { name: 'chapters.json', title: 'Chapters, JSON', use: 'Feeds.', leavesOut: [...kinds, ...atOnce] },
    {
      name: 'chapters.ffmetadata',
      title: 'Chapters, ffmetadata',
      use: 'To put the chapters into the recording’s file with ffmpeg.',
      leavesOut: [...kinds, ...atOnce],
    },
  ];
}

const many = (count: number, what: string): string => (count === 1 ? `1 ${what}` : `${count} ${what}s`);
