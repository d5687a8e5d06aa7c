/** Words for what holding a sequence against its shape found. */
import type { LessonProof } from '#lib/lesson/prove-lesson.ts';
import { isOwn } from '#lib/weave/space/own-id.ts';
import type { Contradiction, NamedRing } from '#lib/weave/space/prove-piece.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { refWords } from './weave-words.ts';

/** Rosettes by themselves are shapes that are known, and no weaves to start from. */
const weaveName = (id: string): string =>
  isOwn(id)
    ? 'this sequence'
    : (findWeave(id)?.name ?? id.replace(/^rosette-(\d+)$/, 'the rosette of $1 rings'));

/** What holds of the whole sequence. */
export function proofWords(proof: LessonProof): string {
  switch (proof.state) {
    case 'agrees':
      if (isOwn(proof.weave))
        return `Held against the shape that was derived from it${proof.repeats > 0 ? `, with ${proof.repeats} repeats and both ends` : ''}: the ${proof.rings} rings have exactly the ${proof.links} links that were told, and no two wires come nearer than they are thick.`;
      return `Held against the shape of ${weaveName(proof.weave)}${proof.repeats > 0 ? `, with ${proof.repeats} repeats and both ends` : ''}: the ${proof.rings} rings have exactly the ${proof.links} links that the shape has${proof.sides > 0 ? `, all ${proof.sides} sides agree` : ''}, and no two wires come nearer than they are thick, so at every crossing one lies over the other.`;
    case 'differs':
      return proof.isNamed
        ? `Held against the shape of ${weaveName(proof.weave)}, it differs; the first place is the one to look at first.`
        : `None of the weaves that the program knows is made like this. The nearest is ${weaveName(proof.weave)}; where it differs is told at the placement. If this is a weave of your own, nothing is wrong.`;
    case 'another weave':
      return `The lesson calls this ${weaveName(proof.named)}, and told like this it is ${weaveName(proof.weave)}.`;
  }
}

/** @param shape id of the weave that the sequence was held against */
export function contradictionWords(contradiction: Contradiction, shape: string): string {
  const weave = weaveName(shape);
  switch (contradiction.code) {
    case 'side-otherwise': {
      const other = contradiction.told === 'front' ? 'back' : 'front';
      return `${whichPass(contradiction.pass)} goes from the ${contradiction.told}; together with the passes before it, ${weave} asks for the ${other}.`;
    }
    case 'link-too-many':
      return `${whichPass(contradiction.pass)} makes a link that ${weave} does not have. Leave it out, or name another ring.`;
    case 'link-too-few':
      return `In ${weave} the ${contradiction.of === 'opened' ? 'opened ring' : 'carried ring'} is linked with one ring more: ${otherRing(contradiction.ring)}.`;
    case 'fold-missing':
      return `${weave} folds rings back here, and nothing is said of it. Links and sides do not show a fold; say under “lies” that they are folded back.`;
    case 'fold-too-many':
      return `It folds rings back, and ${weave} has no fold.`;
    case 'no-place':
      return `What it adds has no place in ${weave}. For a clasp or an end ring that is right; else look at the rings that it passes.`;
  }
}

const whichPass = (pass: number | null): string => (pass === null ? 'The carried ring' : `Pass ${pass}`);
const otherRing = (ring: NamedRing | null): string =>
  ring ? `the ${refWords({ ...ring, from: 'newest' })}` : 'another one that this placement adds';
