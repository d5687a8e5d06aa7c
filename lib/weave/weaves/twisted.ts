/** Chains that twist, and flowers of rings that lie alike. Names: common practice. */
import { back, carry, front, lay, ONE_KIND, open, weave } from './weave.ts';

export const TWISTED = [
  weave({
    id: 'spiral-4-in-1',
    name: 'spiral 4-in-1',
    otherNames: 'spiral chain',
    about: 'Every ring goes through the last two from the same side; the chain twists as it grows.',
    hasHand: true,
    roles: ONE_KIND,
    start: [lay(['ring', '', 1]), open('ring', '', front('', 1))],
    repeat: [open('ring', '', front('', 2, 1))],
  }),
  weave({
    id: 'jens-pind-3',
    name: 'Jens Pind linkage 3',
    otherNames: 'JPL3',
    about:
      'Every ring goes through the last two, and lies back against the twist, so that three strands run round a round chain. Needs rings of very exact size.',
    hasHand: true,
    doubt:
      'Who links with whom is the same as in the spiral 4-in-1; the tight fit and the way the rings lie back make it another chain.',
    roles: ONE_KIND,
    start: [lay(['ring', '', 1]), open('ring', '', front('', 1))],
    repeat: [open('ring', '', [...back('', 2), ...front('', 1)])],
  }),
  weave({
    id: 'rosettes-of-3',
    name: 'rosettes of 3',
    otherNames: 'flower chain, mobius units',
    about: 'Flowers of three rings, each through all earlier ones of its flower, joined by connecting rings.',
    hasHand: true,
    roles: [
      { id: 'petal', name: 'petal' },
      { id: 'connector', name: 'connecting' },
    ],
    start: [
      lay(['petal', 'flower', 1]),
      open('petal', 'flower', front('flower', 1)),
      open('petal', 'flower', front('flower', 2, 1)),
    ],
    repeat: [
      open('connector', 'between', front('flower', 3, 2, 1), [carry('petal', 'flower', 'front')]),
      open('petal', 'flower', [...front('between', 1), ...front('flower', 1)]),
      open('petal', 'flower', [...front('between', 1), ...front('flower', 2, 1)]),
    ],
  }),
];
