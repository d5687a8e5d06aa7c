/** Words for a recording that was edited anew. */
import type { CutItem } from '#lib/retiming/carry-over.ts';
import type { EditList } from '#lib/retiming/edit-list.ts';
import type { EditPointSeen } from '#lib/retiming/edit-points.ts';
import { formatPreciseTimeCode, formatTimeCode } from '#lib/time/time-code.ts';

/** How the two recordings are called where they are compared. */
export interface RecordingNames {
  readonly old: string;
  readonly new: string;
}
export const RE_EDITED: RecordingNames = { old: 'the old recording', new: 'the new recording' };
/** The transcript of another lesson is placed on the lesson's own recording. */
export const placedFrom = (title: string): RecordingNames => ({
  old: `the recording of “${title || 'a lesson without a title'}”`,
  new: 'this lesson’s recording',
});
export const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;

const span = ({ startMs, endMs }: { readonly startMs: number; readonly endMs: number }): string =>
  `${formatPreciseTimeCode(startMs)} to ${formatPreciseTimeCode(endMs)}, ${seconds(endMs - startMs)}`;

/** What was done at an edit point, one sentence for each thing. */
export function editPointWords(
  { cuts, inserted, movedHere, retake }: EditPointSeen,
  names: RecordingNames = RE_EDITED,
): readonly string[] {
  return [
    ...cuts.map(({ edit }) => `Cut from ${names.old}: ${span(edit.old)}.`),
    ...(inserted ? [`New in this recording: ${span(inserted.new)}.`] : []),
    ...(movedHere ? [`Moved here: what stood at ${span(movedHere.old)} in ${names.old}.`] : []),
    ...(retake ? ['What was cut may have been said again here.'] : []),
  ];
}

/** How the two recordings run beside each other; null where they run alike. */
export function speedWords(
  { speed, pitchMoved }: EditList,
  names: RecordingNames = RE_EDITED,
): string | null {
  if (Math.abs(speed - 1) < 0.000_2) return null;
  const percent = Math.abs((speed - 1) * 100);
  const how = `${percent < 1 ? percent.toFixed(2) : percent.toFixed(1)} %`;
  return `${capital(names.new)} runs ${how} ${speed > 1 ? 'faster' : 'slower'} than ${names.old}, ${pitchMoved ? 'and its pitch moved with it' : 'at the same pitch'}. All times are fitted to that.`;
}

/** What a transcript that is placed leaves out, since its sound is not in the recording. */
export function leftOutWords(item: CutItem): string {
  switch (item.of) {
    case 'cue':
      return `“${item.cue.text.replaceAll('\n', ' ')}” is left out.`;
    case 'chapter':
      return `The chapter “${item.chapter.title || 'without a title'}” is left out.`;
    case 'step':
    case 'correction':
      return cutItemWords(item);
  }
}

export function cutItemWords(item: CutItem): string {
  switch (item.of) {
    case 'cue':
      return `“${item.cue.text.replaceAll('\n', ' ')}” is taken out of the transcript.`;
    case 'chapter':
      return `The chapter “${item.chapter.title || 'without a title'}” is gone whole.`;
    case 'step':
      return `The step “${item.sentence || 'without words'}” stays, but its moment ${formatTimeCode(item.atMs)} was cut: choose a new one.`;
    case 'correction':
      return `The correction “${item.correction.wrong}” stays, but is about no moment any more.`;
  }
}

/** `300 cues, 12 chapters and 14 moments of steps`. */
export function carriedWords(carried: {
  cues: number;
  chapters: number;
  steps: number;
  corrections: number;
}): string {
  const parts = [
    [carried.cues, 'cue', 'cues'],
    [carried.chapters, 'chapter', 'chapters'],
    [carried.steps, 'moment of a step', 'moments of steps'],
    [carried.corrections, 'correction', 'corrections'],
  ] as const;
  const told = parts
    .filter(([count]) => count > 0)
    .map(([count, one, several]) => `${count} ${count === 1 ? one : several}`);
  if (told.length === 0) return 'Nothing';
  return told.length === 1 ? (told[0] ?? '') : `${told.slice(0, -1).join(', ')} and ${told.at(-1)}`;
}

export function comparingWords(step: string | null): string {
  switch (step) {
    case 'old sound':
      return 'Listening to the old recording';
    case 'new sound':
      return 'Listening to the new recording';
    case 'speed':
      return 'Looking whether both run alike';
    case 'matching':
      return 'Finding the same sound in both';
    case 'edit points':
      return 'Finding the edit points';
    default:
      return 'Waiting for the worker';
  }
}

export function decideFaultWords(code: string): string {
  switch (code) {
    case 'decided-before':
      return 'Somebody decided about this recording before you, or a newer one came. Open “Bring in” to see.';
    case 'draft-is-newer':
      return 'The lesson was changed meanwhile. Its newest state is loaded; look once more and decide again.';
    case 'list-not-valid':
      return 'These edits do not fit the recordings any more. Load this page again.';
    case 'no-sound':
      return 'One of the two recordings has no sound to compare.';
    case 'decide-first':
      return 'A new recording of this lesson waits for your decision. Decide about that one first.';
    case 'not-found':
      return 'This comparison is not there any more.';
    case 'role-too-small':
      return 'Deciding needs the role of an editor.';
    case 'not-signed-in':
      return 'You are signed out. Sign in in another window, then decide again here.';
    default:
      return 'No answer came. Look at your connection and try again; nothing is done twice.';
  }
}

export function takeBackFaultWords(code: string): string {
  switch (code) {
    case 'not-the-latest':
      return 'The lesson has another recording by now, or a new one waits for your decision. Load this page again.';
    case 'recording-gone':
      return 'The former recording is not with this lesson any more.';
    case 'draft-is-newer':
      return 'The lesson was changed meanwhile. Its newest state is loaded; try again.';
    case 'role-too-small':
      return 'Going back needs the role of an editor.';
    case 'not-signed-in':
      return 'You are signed out. Sign in in another window, then try again here.';
    default:
      return 'No answer came. Look at your connection and try again; nothing is done twice.';
  }
}
