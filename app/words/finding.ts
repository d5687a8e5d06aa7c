/** Words for what a lesson still lacks, and for the way to mend it. */
import type { Finding, Screen } from '#lib/lesson/finding.ts';

const named = (name: string): string => (name.trim() === '' ? '' : ` “${name}”`);

/** One sentence: what a pupil would have to ask, or what would fail. */
export function findingWords({ code, name }: Finding): string {
  switch (code) {
    case 'title-missing':
      return 'The lesson has no title.';
    case 'nothing-to-teach':
      return 'There is neither a recording nor a step: nothing to teach yet.';
    case 'transcript-missing':
      return 'The recording has sound but no transcript, so whoever cannot hear it is left out.';
    case 'correction-incomplete':
      return `The correction${named(name)} does not yet say what was wrong, what is right and whom it concerns.`;
    case 'correction-span-wrong':
      return `The span of the correction${named(name)} is not in the recording, or ends before it starts.`;
    case 'size-without-system':
      return `A size of${named(name) || ' a ring kind'} is stated without its system: the same number means different wires.`;
    case 'metal-missing':
      return `The metal of${named(name) || ' a ring kind'} is not named.`;
    case 'ring-kind-nameless':
      return 'A ring kind has no name.';
    case 'ring-kind-unknown':
      return `A placement (${name}) uses a ring kind that was taken away.`;
    case 'kit-not-computed':
      return `No kit can be computed for the size${named(name)}.`;
    case 'sentence-missing':
      return `A step (${name}) has no sentence for the pupil.`;
    case 'chapter-nameless':
      return `A chapter (${name}) has no title.`;
    case 'chapter-after-end':
      return `The chapter${named(name)} starts after the recording has ended.`;
    case 'link-not-well-formed':
      return `The link of${named(name) || ' an entry'} leads nowhere: an address begins with https:// and names a site.`;
    case 'material-nameless':
      return 'A material has no name.';
    case 'caution-empty':
      return 'A caution has no words.';
    case 'recording-missing':
      return 'There is no recording: pupils would have the steps alone.';
    case 'transcript-after-end':
      return 'Some of the transcript lies behind the end of the recording. Do the two belong together?';
    case 'times-approximate':
      return 'Some of the transcript’s times were spread, not heard: its captions may come early or late.';
    case 'captions-hard-to-read':
      return `${name} can hardly be read: too many lines, too fast, too short, or one over another.`;
    case 'chapters-missing':
      return 'There are no chapters: pupils cannot find the repeat unit again.';
    case 'chapter-late-start':
      return `The first chapter${named(name)} does not start at 0:00; many places that host recordings then show no chapters.`;
    case 'chapter-short':
      return `The chapter${named(name)} is shorter than 10 seconds; many places that host recordings then show no chapters.`;
    case 'repeat-missing':
      return 'No repeat unit is described, so every size gets the same kit.';
    case 'sample-missing':
      return 'No measured sample: how many repeats a length takes cannot be told.';
    case 'sizes-missing':
      return 'No size is given, so the description text can count no rings.';
    case 'piece-not-sound':
      return `The ring sequence cannot be made as it is told${name === '' ? '' : `; it starts at a placement (${name})`}.`;
    case 'adds-nothing':
      return `A placement (${name}) neither opens a ring nor lays one out.`;
    case 'nothing-closed':
      return 'No ring is closed beforehand. If some are, say so: it is half of the preparation.';
    case 'said-otherwise':
      return `Said: ${name}.`;
    case 'never-said':
      return name;
    case 'ring-too-tight':
      return `The ring opened in${named(name)} cannot hold the wires that the step puts through it.`;
    case 'ratio-unusual':
      return `The aspect ratio of${named(name) || ' a ring kind'} is unusual for this weave.`;
    case 'ending-missing':
      return 'Neither a step nor a chapter tells how the piece ends.';
    case 'terms-missing':
      return `Words are used that no chapter explains: ${name}.`;
    case 'tools-missing':
      return 'No tool is listed.';
    case 'leaning-unstated':
      return `The weave${named(name)} usually has a left and a right hand; the lesson does not say which one it shows.`;
    case 'caution-missing':
      return `There is no caution. By what the lesson uses, these would fit: ${name}.`;
    case 'caution-fits':
      return `By what the lesson uses, a caution would fit: ${name}.`;
    case 'moment-missing':
      return `A step (${name}) has no moment in the recording, so it gets no picture.`;
    case 'moment-after-end':
      return `The moment of a step (${name}) lies behind the end of the recording.`;
    case 'colour-missing':
      return `The colour of${named(name) || ' a ring kind'} is not said in words.`;
    case 'picture-without-words':
      return `The picture of the step${named(name)} has no words for pupils who do not see it.`;
    case 'colours-alike':
      return `${name} are of one size, and some eyes cannot tell their colours in pictures apart.`;
    case 'quantity-missing':
      return `How much of${named(name) || ' a material'} is needed is not said.`;
    case 'summary-missing':
      return 'There is no summary of what the pupil will make.';
    case 'weave-missing':
      return 'The weave is not named.';
    case 'minutes-missing':
      return 'It is not said how long the piece takes.';
    case 'licence-missing':
      return 'It is not said what others may do with the lesson.';
    case 'link-nameless':
      return `The link${named(name)} has no words of its own.`;
  }
}

/** Where a finding is mended. */
export const SCREEN_NAMES: Readonly<Record<Screen, string>> = {
  'bring-in': 'Bring in',
  transcript: 'Transcript',
  making: 'Making',
  kit: 'Kit',
  corrections: 'Corrections',
};
