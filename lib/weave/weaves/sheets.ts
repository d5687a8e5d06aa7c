/** Strips of European and Japanese weaves. Names: common practice. */
import { back, carry, front, lay, ONE_KIND, open, weave } from './weave.ts';

const EDGE_AND_MIDDLE = [
  { id: 'edge', name: 'edge' },
  { id: 'middle', name: 'middle' },
] as const;

const FLAT_AND_CONNECTOR = [
  { id: 'flat', name: 'flat' },
  { id: 'connector', name: 'connecting' },
] as const;

export const SHEETS = [
  weave({
    id: 'european-4-in-1-three-rows',
    name: 'European 4-in-1, three rows',
    otherNames: '4-in-1 strip',
    about:
      'Rows lean to and fro. Every opened ring of the middle row takes two closed rings of each edge: down through one edge, up through the other.',
    hasHand: false,
    roles: EDGE_AND_MIDDLE,
    start: [lay(['edge', 'A', 1], ['edge', 'C', 1])],
    repeat: [
      open(
        'middle',
        'B',
        [...front('A', 1), ...back('C', 1)],
        [carry('edge', 'A', 'front'), carry('edge', 'C', 'back')],
      ),
    ],
  }),
  weave({
    id: 'european-4-in-1-five-rows',
    name: 'European 4-in-1, five rows',
    about: 'The strip of three rows with two rows more; rings of the second and fourth row are opened.',
    hasHand: false,
    roles: EDGE_AND_MIDDLE,
    start: [lay(['edge', 'A', 1], ['middle', 'C', 1], ['edge', 'E', 1])],
    repeat: [
      open(
        'middle',
        'B',
        [...front('A', 1), ...back('C', 1)],
        [carry('edge', 'A', 'front'), carry('middle', 'C', 'back')],
      ),
      open('middle', 'D', [...front('C', 2, 1), ...back('E', 1)], [carry('edge', 'E', 'back')]),
    ],
  }),
  weave({
    id: 'european-8-in-2-three-rows',
    name: 'European 8-in-2, three rows',
    otherNames: 'doubled 4-in-1',
    about: 'European 4-in-1 with every ring doubled: pairs lie where single rings lay.',
    hasHand: false,
    doubt:
      'Some call this by a name that others use for another chain; say how many rings go through how many.',
    roles: EDGE_AND_MIDDLE,
    start: [lay(['edge', 'A', 2], ['edge', 'C', 2])],
    repeat: [
      open(
        'middle',
        'B',
        [...front('A', 2, 1), ...back('C', 2, 1)],
        [carry('edge', 'A', 'front', 2), carry('edge', 'C', 'back', 2)],
      ),
      open('middle', 'B', [...front('A', 4, 3, 2, 1), ...back('C', 4, 3, 2, 1)]),
    ],
  }),
  weave({
    id: 'european-6-in-1-two-rows',
    name: 'European 6-in-1, two rows',
    about:
      'The narrowest strip of its kind. Every opened ring goes through three rings of the other row, all from the same side; half Persian 3-in-1 has the same links and turns one of them round.',
    hasHand: false,
    roles: ONE_KIND,
    start: [lay(['ring', 'A', 1]), open('ring', 'B', back('A', 1), [carry('ring', 'A', 'back')])],
    repeat: [open('ring', 'B', back('A', 2, 1), [carry('ring', 'A', 'back')])],
    finishing: [open('ring', 'B', back('A', 2, 1))],
  }),
  weave({
    id: 'european-6-in-1-three-rows',
    name: 'European 6-in-1, three rows',
    about: 'Every opened ring of the middle row takes three rings of each edge.',
    hasHand: false,
    roles: EDGE_AND_MIDDLE,
    start: [
      lay(['edge', 'A', 1], ['edge', 'C', 1]),
      open(
        'middle',
        'B',
        [...front('A', 1), ...back('C', 1)],
        [carry('edge', 'A', 'front'), carry('edge', 'C', 'back')],
      ),
    ],
    repeat: [
      open(
        'middle',
        'B',
        [...front('A', 2, 1), ...back('C', 2, 1)],
        [carry('edge', 'A', 'front'), carry('edge', 'C', 'back')],
      ),
    ],
    finishing: [open('middle', 'B', [...front('A', 2, 1), ...back('C', 2, 1)])],
  }),
  weave({
    id: 'japanese-4-in-1-two-rows',
    name: 'Japanese 4-in-1, two rows',
    otherNames: 'square 4-in-1',
    about: 'Large rings lie flat in squares; small rings stand upright and join neighbours.',
    hasHand: false,
    roles: FLAT_AND_CONNECTOR,
    start: [
      lay(['flat', 'A', 1], ['flat', 'B', 1]),
      open('connector', 'across', [...front('A', 1), ...back('B', 1)]),
    ],
    repeat: [
      open('connector', 'along A', front('A', 1), [carry('flat', 'A', 'back')]),
      open('connector', 'along B', front('B', 1), [carry('flat', 'B', 'back')]),
      open('connector', 'across', [...front('A', 1), ...back('B', 1)]),
    ],
  }),
  weave({
    id: 'japanese-6-in-1-three-rows',
    name: 'Japanese 6-in-1, three rows',
    otherNames: 'hexagonal 6-in-1',
    about:
      'Large rings lie flat in triangles, the middle row half a ring further; small rings join neighbours.',
    hasHand: false,
    roles: FLAT_AND_CONNECTOR,
    start: [
      lay(['flat', 'A', 1], ['flat', 'B', 1], ['flat', 'C', 1]),
      open('connector', 'across', [...front('A', 1), ...back('B', 1)]),
      open('connector', 'across', [...front('B', 1), ...back('C', 1)]),
    ],
    repeat: [
      open('connector', 'along', front('A', 1), [carry('flat', 'A', 'back')]),
      open('connector', 'along', front('C', 1), [carry('flat', 'C', 'back')]),
      open('connector', 'across', [...front('A', 1), ...back('B', 1)]),
      open('connector', 'across', [...front('B', 1), ...back('C', 1)]),
      open('connector', 'along', front('B', 1), [carry('flat', 'B', 'back')]),
      open('connector', 'across', [...front('A', 1), ...back('B', 1)]),
      open('connector', 'across', [...front('B', 1), ...back('C', 1)]),
    ],
  }),
];
