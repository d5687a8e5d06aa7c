/** Words for what a profile finds in captions. */
import type { CaptionFault, CaptionFaultCode } from '#lib/transcript/caption-faults.ts';
import type { CaptionProfile } from '#lib/transcript/caption-profile.ts';

/** A kind of fault, as the head of a list of places. */
export function captionFaultWords(code: CaptionFaultCode): string {
  switch (code) {
    case 'line-long':
      return 'Lines that are too long';
    case 'lines-many':
      return 'Too many lines at once';
    case 'fast':
      return 'More letters than can be read in the time';
    case 'words-fast':
      return 'More words than can be read in the time';
    case 'short':
      return 'Shown too short';
    case 'long':
      return 'Shown too long';
    case 'gap-small':
      return 'Breaks so short that they flicker';
    case 'overlap':
      return 'Two at the same time';
  }
}

/** What one fault is, beside what it should be. */
export function captionFaultFigure({ code, is, limit }: CaptionFault): string {
  switch (code) {
    case 'line-long':
      return `${is} characters in a line, ${limit} at most`;
    case 'lines-many':
      return `${is} lines, ${limit} at most`;
    case 'fast':
      return `${is} characters a second, ${limit} at most`;
    case 'words-fast':
      return `${is} words a minute, ${limit} at most`;
    case 'short':
      return `${seconds(is)}, ${seconds(limit)} at least`;
    case 'long':
      return `${seconds(is)}, ${seconds(limit)} at most`;
    case 'gap-small':
      return `${seconds(is)} between, none or ${seconds(limit)} at least`;
    case 'overlap':
      return `${seconds(is)} over the next one`;
  }
}

/** What a profile asks for, in a line. */
export function captionProfileWords(profile: CaptionProfile): string {
  const parts = [
    `lines of ${profile.lineLength.warn} characters`,
    `${profile.mostLines} lines`,
    profile.speed.warn === null ? null : `${profile.speed.warn} characters a second`,
    profile.wordsAMinute.warn === null ? null : `${profile.wordsAMinute.warn} words a minute`,
    profile.shortestMs.warn === null
      ? null
      : `shown ${profile.shortestMs.warn / 1000} to ${(profile.longestMs.warn ?? 0) / 1000} s`,
  ];
  return parts.filter((part) => part !== null).join(', ');
}

const seconds = (ms: number): string => `${(ms / 1000).toFixed(2).replace(/0$/, '')} s`;
