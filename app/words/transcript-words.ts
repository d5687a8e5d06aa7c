/** Words for transcript files: what was understood, what was lost, what went wrong. */
import type { OtherFile, TranscriptFormat } from '#lib/transcript/detect-format.ts';
import type { LossCode } from '#lib/transcript/loss.ts';

export function formatWords(format: TranscriptFormat): string {
  switch (format) {
    case 'webvtt':
      return 'WebVTT captions';
    case 'srt':
      return 'SRT captions';
    case 'ttml':
      return 'TTML captions';
    case 'stamped text':
      return 'Text with time stamps';
    case 'script':
      return 'A script without times';
  }
}

/** What a loss is, as the head of a list of lines. */
export function lossWords(code: LossCode): string {
  switch (code) {
    case 'header-text':
      return 'Text in the head of the file';
    case 'note':
      return 'Notes between the cues';
    case 'style':
      return 'Style sheets';
    case 'region':
      return 'Regions of the picture';
    case 'setting':
      return 'Cue settings that mean nothing here';
    case 'formatting':
      return 'Formatting inside the text; the words stay';
    case 'voice':
      return 'The speaker’s name, the same throughout';
    case 'place':
      return 'Places on the picture';
    case 'word-times':
      return 'Times of single words; the cue has them together';
    case 'cue-name':
      return 'Names of cues';
    case 'time-unreadable':
      return 'Times that cannot be read, with their text';
    case 'time-negative':
      return 'Times before the start, with their text';
    case 'time-too-late':
      return 'Times beyond 100 hours, with their text';
    case 'text-without-time':
      return 'Text that has no time';
    case 'text-before-first-time':
      return 'Text before the first time';
    case 'cue-empty':
      return 'Times that have no text';
    case 'chapter-hidden':
      return 'Chapters that the file keeps out of its list';
    case 'chapter-extra':
      return 'Pictures, addresses and places of chapters';
    case 'chapter-end':
      return 'Ends of chapters; here each lasts until the next begins';
    case 'chapter-too-many':
      return 'Chapters beyond 500, the most that a lesson holds';
    case 'title-cut':
      return 'The rest of titles longer than 300 characters';
    case 'json-unreadable':
      return 'JSON that is broken, or has no list of chapters';
    case 'character-unreadable':
      return 'Characters that could not be read, shown as �';
    case 'voice-written-out':
      return 'Speakers’ names, now written where the speaker changes';
    case 'escape-taken':
      return 'Signs such as &amp;, taken as the sign they stand for';
    case 'blank-line-in-cue':
      return 'Text behind a blank line, kept with the cue before it';
    case 'number-missing':
      return 'Cues without a number, taken all the same';
    case 'fraction-digits':
      return 'Times with other than three digits of a second';
    case 'end-before-start':
      return 'Cues that ended before they began; the end is moved';
    case 'end-missing':
      return 'Cues without an end; they end with the recording, or when they have been read';
    case 'time-base':
      return 'Times that count from a clock, taken as if they counted from the start';
    case 'out-of-order':
      return 'Cues out of order, now in order of time';
    case 'long-cue-parted':
      return 'Text too long for one cue, parted into several';
  }
}

const OTHER_FILES: Readonly<Record<OtherFile, string>> = {
  pdf: 'This is a PDF. Copy its text and paste it below, or save it as plain text.',
  'word-processor':
    'This is a word processor’s file. Save it there as plain text, or copy its text and paste it below.',
  'picture-or-recording':
    'This is a picture or a recording, not a transcript. A recording goes in its own part of this page.',
  markup: 'This is a web page or another marked-up file. Export it as WebVTT, SRT or plain text with times.',
};

interface Refusal {
  readonly code: string;
  readonly looksLike?: OtherFile | undefined;
  readonly cues?: number | undefined;
  readonly most?: number | undefined;
  readonly incident?: string | undefined;
}

/** What happened to a file, and what to do about it. */
export function transcriptFaultWords(fault: Refusal): string {
  switch (fault.code) {
    case 'transcript-empty':
      return 'There is no text in it.';
    case 'transcript-not-text':
      return fault.looksLike ? OTHER_FILES[fault.looksLike] : 'This is not text.';
    case 'transcript-without-times':
      return 'Neither times nor words to speak were found in it. The file is kept.';
    case 'transcript-without-cues':
      return 'Times were found in it, but none with text that could be taken. The lines are listed below; the file is kept.';
    case 'transcript-too-many-cues':
      return `It has ${fault.cues ?? 'too many'} cues; a lesson holds ${fault.most ?? 'fewer'}. Part the recording into several lessons. The file is kept.`;
    case 'body-too-large':
      return 'The file is larger than 20 MB, which no transcript is. Is it the right one?';
    case 'not-signed-in':
      return 'You are signed out. Sign in in another window, then try again here.';
    case 'role-too-small':
      return 'You may read this lesson, not change it.';
    case 'not-found':
      return 'The lesson or the file is not there any more.';
    case 'unreachable':
      return 'It did not reach the server. Look at your connection and try again; your file is untouched.';
    default:
      return `Something went wrong here${fault.incident ? ` (incident ${fault.incident})` : ''}. Try again; your file is untouched.`;
  }
}
