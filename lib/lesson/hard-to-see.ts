/** What of a lesson some pupils would see badly, or not at all: captions, colours of pictures, pictures without words. */
import { ALIKE_BELOW, unlikeness } from '#lib/rings/colour-likeness.ts';
import { type CaptionFaultCode, captionFaults } from '#lib/transcript/caption-faults.ts';
import { CAPTION_PROFILES } from '#lib/transcript/caption-profile.ts';
import { type Content, SEQUENCE_PARTS } from './content.ts';
import type { Check, Checked, Finding } from './finding.ts';
import { areOfOneSize } from './ring-lines.ts';

/** All of it. */
export const hardToSee: Check = (checked) => [
  ...captions(checked),
  ...pictures(checked),
  ...colours(checked.content),
];

/** What shows captions breaks long lines by itself, and one that stays for long can be read. */
const READABLE: ReadonlySet<CaptionFaultCode> = new Set(['line-long', 'long']);

/** One finding for all captions, at the first: the transcript's own screen lists them. */
function captions({ cues, recording }: Checked): readonly Finding[] {
  if (recording === null) return [];
  const hard = captionFaults(cues, CAPTION_PROFILES.lesson).filter(
    ({ level, code }) => level === 'error' && !READABLE.has(code),
  );
  const [first] = hard;
  if (!first) return [];
  const count = new Set(hard.map(({ cueId }) => cueId)).size;
  const name = count === 1 ? 'One caption' : `${count} captions`;
  return [{ code: 'captions-hard-to-read', weight: 'warns', screen: 'transcript', of: first.cueId, name }];
}

/** A step that adds no rings has nothing that words for its picture could be made from. */
const pictures = ({ content, recording }: Checked): readonly Finding[] =>
  content.steps
    .filter(
      ({ atMs, pictureText }) =>
        recording !== null &&
        recording.hasVideo !== false &&
        atMs !== null &&
        atMs < recording.durationMs &&
        pictureText.trim() === '',
    )
    .map(({ id, sentence }) => ({
      code: 'picture-without-words',
      weight: 'warns',
      screen: 'making',
      of: id,
      name: sentence.trim().slice(0, 60),
    }));

/** Ring kinds of the sequence that only their colour tells apart, and whose colours are alike. */
function colours(content: Content): readonly Finding[] {
  const placed = new Set(
    SEQUENCE_PARTS.flatMap((part) =>
      content[part].flatMap(({ opened, carries }) => [opened, ...carries.map(({ ringKind }) => ringKind)]),
    ),
  );
  const kinds = content.ringKinds.filter(({ id }) => placed.has(id));
  return kinds.flatMap((kind, index) => {
    const like = kinds
      .slice(index + 1)
      .filter(
        (other) => areOfOneSize(kind, other) && unlikeness(kind.colourCode, other.colourCode) < ALIKE_BELOW,
      );
    return like.map(
      (other): Finding => ({
        code: 'colours-alike',
        weight: 'warns',
        screen: 'making',
        of: other.id,
        name: `“${kind.name}” and “${other.name}”`,
        detail: kind.id,
      }),
    );
  });
}
