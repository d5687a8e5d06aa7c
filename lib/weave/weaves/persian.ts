/**
 * Half and full Persian. A ring goes through some of its neighbours one way
 * and through the others the other way; which is what parts them from the
 * European strips with the same links. Names: common practice.
 */
import { back, carry, front, lay, ONE_KIND, open, TWO_SIZES, weave } from './weave.ts';

export const PERSIAN = [
  weave({
    id: 'half-persian-3-in-1',
    name: 'half Persian 3-in-1',
    about:
      'Two rows. Every opened ring goes through two rings of the other row from the back and carries the next one, entered from the front.',
    hasHand: true,
    roles: ONE_KIND,
    start: [lay(['ring', 'A', 1]), open('ring', 'B', back('A', 1), [carry('ring', 'A', 'front')])],
    repeat: [open('ring', 'B', back('A', 2, 1), [carry('ring', 'A', 'front')])],
    finishing: [open('ring', 'B', back('A', 2, 1))],
  }),
  weave({
    id: 'half-persian-3-in-1-two-sizes',
    name: 'half Persian 3-in-1, two sizes',
    otherNames: 'graded half Persian 3-in-1',
    about:
      'Half Persian 3-in-1 in which large and small take turns along both rows. It starts from three rings, large, small, large, of which the second large one is closed through the other two; a small ring that carries a large one and a large ring that carries a small one take turns; one large ring ends it, after a small one, so that two large rings lie at both ends.',
    hasHand: true,
    roles: TWO_SIZES,
    start: [
      lay(['large', 'A', 1], ['small', 'A', 1]),
      open('large', 'B', [...back('A', 2), ...front('A', 1)]),
    ],
    repeat: [
      open('small', 'B', back('A', 2, 1), [carry('large', 'A', 'front')]),
      open('large', 'B', back('A', 2, 1), [carry('small', 'A', 'front')]),
    ],
    finishing: [open('large', 'B', back('A', 2, 1))],
    endsAfter: 1,
  }),
  weave({
    id: 'half-persian-4-in-1',
    name: 'half Persian 4-in-1',
    about:
      'Three closed rings are laid out. Every opened ring goes through two of the other row from the back and one from the front, and carries the next one.',
    hasHand: true,
    roles: ONE_KIND,
    start: [lay(['ring', 'A', 3])],
    repeat: [open('ring', 'B', [...back('A', 3, 2), ...front('A', 1)], [carry('ring', 'A', 'front')])],
    finishing: [open('ring', 'B', [...back('A', 3, 2), ...front('A', 1)])],
  }),
  weave({
    id: 'half-persian-4-in-1-two-sizes',
    name: 'half Persian 4-in-1, two sizes',
    about:
      'Three closed rings are laid out: large, small, large. A large ring that carries a small one and a small ring that carries a large one take turns, each through two rings from the back and one from the front; a large ring that carries none ends it.',
    hasHand: true,
    roles: TWO_SIZES,
    start: [lay(['large', 'A', 1], ['small', 'A', 1], ['large', 'A', 1])],
    repeat: [
      open('large', 'B', [...back('A', 3, 2), ...front('A', 1)], [carry('small', 'A', 'front')]),
      open('small', 'B', [...back('A', 3, 2), ...front('A', 1)], [carry('large', 'A', 'front')]),
    ],
    finishing: [open('large', 'B', [...back('A', 3, 2), ...front('A', 1)])],
  }),
  weave({
    id: 'full-persian-6-in-1',
    name: 'full Persian 6-in-1',
    about:
      'Four rows round a square; rows beside each other are joined as in half Persian 3-in-1, so that every ring has six neighbours.',
    hasHand: true,
    doubt:
      'Which rings of neighbouring rows meet is our reading of the weave; compare it with your own piece.',
    roles: ONE_KIND,
    start: [
      lay(['ring', 'A', 1], ['ring', 'C', 1]),
      open(
        'ring',
        'B',
        [...back('A', 1), ...back('C', 1)],
        [carry('ring', 'A', 'front'), carry('ring', 'C', 'front')],
      ),
      open('ring', 'D', [...back('A', 2), ...front('A', 1), ...back('C', 2), ...front('C', 1)]),
    ],
    repeat: [
      open(
        'ring',
        'B',
        [...back('A', 2, 1), ...back('C', 2, 1)],
        [carry('ring', 'A', 'front'), carry('ring', 'C', 'front')],
      ),
      open('ring', 'D', [...back('A', 3, 2), ...front('A', 1), ...back('C', 3, 2), ...front('C', 1)]),
    ],
    finishing: [
      open('ring', 'B', [...back('A', 2, 1), ...back('C', 2, 1)]),
      open('ring', 'D', [...back('A', 2, 1), ...back('C', 2, 1)]),
    ],
  }),
];
