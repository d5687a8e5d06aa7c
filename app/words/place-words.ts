/** Places outside where something of a lesson stands, in words. */
import type { Place, PlaceState } from '#lib/description/places.ts';

export interface PlaceWords {
  readonly name: string;
  /** What to do where it is stale. */
  readonly again: string;
}

export const PLACE_WORDS: Readonly<Record<Place, PlaceWords>> = {
  recording: { name: 'Recording', again: 'Upload the new recording.' },
  title: { name: 'Title of the recording', again: 'Change the title.' },
  'description-text': { name: 'Description, as plain text', again: 'Paste it again.' },
  'description-markdown': { name: 'Description, as Markdown', again: 'Paste it again.' },
  'description-html': { name: 'Description, as HTML', again: 'Paste it again.' },
  captions: { name: 'Captions', again: 'Put the new captions in place of the old ones.' },
  chapters: { name: 'Chapter file', again: 'Put the new file in place of the old one.' },
  'kit-sheets': {
    name: 'Kit sheets that you print or send out',
    again: 'Print them anew; throw the old ones away.',
  },
};

/** What is known of a place, as one short sentence without its day. */
export function placeStateWords(state: PlaceState): string {
  switch (state.is) {
    case 'unknown':
      return 'Not noted yet.';
    case 'stale':
      return state.lines === null
        ? 'Not the same any more.'
        : `Not the same any more: ${state.lines === 1 ? '1 line differs' : `${state.lines} lines differ`}.`;
    case 'taken':
      return 'Taken along and still right. Tick it once it is there.';
    case 'in place':
      return 'Up to date.';
  }
}
