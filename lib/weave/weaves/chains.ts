/** Chains of single rings, pairs and threes, with and without folds. Names: common practice. */
import { back, carry, front, lay, newest, ONE_KIND, open, weave } from './weave.ts';

export const CHAINS = [
  weave({
    id: 'chain-1-1',
    name: 'single chain 1-1',
    otherNames: 'cable chain',
    about: 'Ring after ring, each through the one before. Every opened ring brings a closed one with it.',
    hasHand: false,
    roles: ONE_KIND,
    start: [lay(['ring', '', 1])],
    repeat: [open('ring', '', back('', 1), [carry('ring', '', 'front')])],
  }),
  weave({
    id: 'chain-2-1',
    name: 'chain 2-1',
    otherNames: 'pair and single chain',
    about: 'Single rings and pairs take turns; single rings at both ends let the clasp lie flat.',
    hasHand: false,
    roles: [
      { id: 'single', name: 'single' },
      { id: 'pair', name: 'paired' },
    ],
    start: [open('single', 'single', [], [carry('pair', 'pair', 'front', 2)])],
    repeat: [open('single', 'single', back('pair', 2, 1), [carry('pair', 'pair', 'front', 2)])],
    finishing: [open('single', 'single', back('pair', 2, 1))],
  }),
  weave({
    id: 'chain-2-2',
    name: 'double chain 2-2',
    otherNames: '2-in-2 chain',
    about: 'Pair after pair: two opened rings take the same way through both rings of the last pair.',
    hasHand: false,
    roles: ONE_KIND,
    start: [lay(['ring', '', 2])],
    repeat: [open('ring', '', back('', 2, 1)), open('ring', '', back('', 3, 2))],
  }),
  weave({
    id: 'chain-3-3',
    name: 'triple chain 3-3',
    about: 'Three rings beside each other, each through all three of the last three.',
    hasHand: false,
    roles: ONE_KIND,
    start: [lay(['ring', '', 3])],
    repeat: [
      open('ring', '', back('', 3, 2, 1)),
      open('ring', '', back('', 4, 3, 2)),
      open('ring', '', back('', 5, 4, 3)),
    ],
  }),
  weave({
    id: 'box-chain',
    name: 'box chain',
    otherNames: 'folded 2-2 chain, box 4-in-1',
    about:
      'A 2-2 chain in which every second pair is folded back and locked by the next pair, put through between.',
    hasHand: false,
    roles: ONE_KIND,
    start: [
      lay(['ring', 'folded', 2]),
      open('ring', 'upright', back('folded', 2, 1), [carry('ring', 'folded', 'front', 2)]),
      open('ring', 'upright', [...back('folded', 4, 3), ...front('folded', 2, 1)], [], {
        lie: 'fold back',
        lays: [newest('folded', 2), newest('folded', 1)],
      }),
    ],
    repeat: [
      open('ring', 'upright', back('folded', 2, 1), [carry('ring', 'folded', 'front', 2)], {
        lie: 'through between',
        lays: [newest('upright', 3), newest('upright', 2)],
      }),
      open('ring', 'upright', [...back('folded', 4, 3), ...front('folded', 2, 1)], [], {
        lie: 'fold back',
        lays: [newest('folded', 2), newest('folded', 1)],
      }),
    ],
    finishing: [
      open('ring', 'upright', back('folded', 2, 1), [], {
        lie: 'through between',
        lays: [newest('upright', 3), newest('upright', 2)],
      }),
      open('ring', 'upright', back('folded', 2, 1)),
    ],
  }),
  weave({
    id: 'byzantine',
    name: 'byzantine',
    about:
      'A pair, a pair that is folded back, and a pair that locks the fold: knot after knot, each turned a quarter.',
    hasHand: false,
    roles: [
      { id: 'knot', name: 'knot' },
      { id: 'folded', name: 'folded' },
      { id: 'lock', name: 'lock' },
    ],
    start: [lay(['lock', 'lock', 2])],
    repeat: [
      open('knot', 'knot', back('lock', 2, 1), [carry('folded', 'folded', 'front', 2)]),
      open('knot', 'knot', [...back('lock', 2, 1), ...front('folded', 2, 1)], [], {
        lie: 'fold back',
        lays: [newest('folded', 2), newest('folded', 1)],
      }),
      open('lock', 'lock', back('folded', 2, 1), [], {
        lie: 'through between',
        lays: [newest('knot', 2), newest('knot', 1)],
      }),
      open('lock', 'lock', back('folded', 2, 1), [], {
        lie: 'through between',
        lays: [newest('knot', 2), newest('knot', 1)],
      }),
    ],
  }),
  weave({
    id: 'shaggy-loops',
    name: 'shaggy loops',
    about: 'A single chain whose rings each carry two loops that hang free.',
    hasHand: false,
    roles: [
      { id: 'base', name: 'base' },
      { id: 'loop', name: 'loop' },
    ],
    start: [lay(['base', 'base', 1])],
    repeat: [open('base', 'base', back('base', 1), [carry('loop', 'loop', 'front', 2)])],
    finishing: [open('base', 'base', back('base', 1))],
  }),
];
