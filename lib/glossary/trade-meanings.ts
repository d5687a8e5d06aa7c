/**
 * What terms of the trade mean, in our own words, for pupils who meet them for
 * the first time. Common practice, from memory; what a standard or a law
 * settles (gauges, fineness, hallmarks) is worded so that it decides nothing.
 */
import type { ExplainedTerm } from './explained-term.ts';
import { TRADE_TERMS } from './trade-terms.ts';

/** Each under its term in trade-terms.ts. */
export const MEANINGS: Readonly<Record<string, string>> = {
  'jump ring': 'A ring of wire with one cut in it, which is opened and closed with two pliers.',
  'open ring': 'A ring that was opened before weaving, so that it can be threaded in at once.',
  'closed ring':
    'A ring that was closed before weaving. It is never threaded itself: an open ring picks it up.',
  'open the ring':
    'Turn its ends past each other, one towards you and one away. Pulled apart sideways it would never be round again.',
  'close the ring':
    'Turn the ends back past each other a little, press them together and let them meet without a step or a gap.',
  'flush close':
    'Close a ring so that its ends meet fully: no gap, no step, nothing that catches a fingernail.',
  seam: 'Where the two ends of a ring meet.',
  'seam side': 'The side of a chain or ring at which the seams lie.',
  ridge: 'The raised line along a chain where rings lie on top of each other.',
  trough: 'The hollow line along a chain, between its ridges.',
  'clasp ring': 'The ring that ties the clasp to the last rings of the weave.',
  connector: 'A ring that ties one unit to the next.',
  'connector ring': 'A ring that ties one unit to the next.',
  'captive ring': 'A ring that is held in its place by the rings around it and goes through none of them.',
  'repeat unit': 'The steps that are made again and again until the piece is long enough.',
  'starting unit': 'The rings that are made first and that the repeat unit grows from.',
  'extender chain': 'A few links at one end, so that the clasp can close at more than one length.',
  'toggle bar': 'The bar of a toggle clasp, which is put through its ring and turns across it.',
  'twist-tie':
    'A short piece of bendable wire, threaded through the first rings as a handle and taken off at the end.',
  'ear wire': 'The hook that goes through the ear.',
  weave: 'The order in which rings go through each other; also the chain or sheet that comes of it.',
  'fold back':
    'Let the last pair of rings fall apart to both sides, back along the chain, so that the pair before it opens.',
  'speed weaving':
    'Weaving with half of the rings closed beforehand: every open ring picks up closed ones, and only open ones are closed at the piece.',
  leaning: 'The side to which rings lie over. A ring that leans the other way does not fit in.',
  'left-leaning': 'Lying over to the left as the piece is held.',
  'right-leaning': 'Lying over to the right as the piece is held.',
  burnish: 'Rub a surface smooth and bright with something harder than it.',
  anneal: 'Soften metal by heat, so that it bends again.',
  deburr: 'Take off the small sharp edge that cutting leaves.',
  oxidise: 'Darken metal by a chemical, so that hollows show.',
  'tumble in shot':
    'Turn finished pieces in a drum with steel shot and soapy water, which polishes them and takes off small burrs.',
  'pull test':
    'A short, gentle pull on a finished part: a ring that was not closed well opens now and not on the wrist.',
  coil: 'Wire wound tightly round a rod, from which rings are cut.',
  springback:
    'How far wire opens again when it is let go: rings turn out a little wider than the rod they were wound on.',
  kerf: 'The width that a saw blade takes away, so that a sawn ring is not quite round when it is closed.',
  mandrel: 'The rod that wire is wound on to make rings.',
  'aspect ratio':
    'The inner diameter of a ring divided by the thickness of its wire. It tells whether a weave will be too tight, lie well or hang loose.',
  'wire diameter': 'How thick the wire is.',
  'inner diameter':
    'How wide the hole of a ring is, measured at the cut ring. The rod that it was wound on is a little thinner.',
  'inside diameter':
    'How wide the hole of a ring is, measured at the cut ring. The rod that it was wound on is a little thinner.',
  'outer diameter': 'How wide a ring is over all: its hole and twice its wire.',
  ID: 'Inner diameter: how wide the hole of a ring is.',
  WD: 'Wire diameter: how thick the wire is.',
  'wire gauge':
    'A number for the thickness of wire. There is more than one system, and the same number means different wire in each.',
  gauge:
    'A number for the thickness of wire. There is more than one system, and the same number means different wire in each.',
  'standard wire gauge':
    'The British system of numbers for the thickness of wire, SWG for short: the higher the number, the thinner the wire.',
  'American wire gauge':
    'The American system of numbers for the thickness of wire, AWG for short: the higher the number, the thinner the wire.',
  SWG: 'Standard wire gauge, the British system: the higher the number, the thinner the wire. Not the same wire as that number in AWG.',
  AWG: 'American wire gauge: the higher the number, the thinner the wire. Not the same wire as that number in SWG.',
  'half-hard': 'Wire that keeps its shape and still bends with pliers.',
  'dead-soft': 'Wire without any spring, which bends by itself under load.',
  'spring temper': 'Wire so hard that it springs back rather than bends.',
  anodised:
    'Of aluminium, niobium or titanium: given a hard coloured skin by electric current. Scratches go through it.',
  'anodised aluminium':
    'Aluminium with a hard coloured skin, given by electric current. Scratches go through it.',
  'enamelled copper': 'Copper wire under a coloured lacquer, which pliers can scratch.',
  'sterling silver': 'Silver with 7.5 % of other metal, mostly copper, which makes it hard enough for rings.',
  'fine silver': 'Silver without anything added; softer than sterling.',
  'nickel silver': 'A white alloy of copper, nickel and zinc. There is no silver in it.',
  argentium: 'A silver alloy with some germanium, which tarnishes slowly.',
  niobium: 'A light grey metal that takes bright colours by electric current.',
  'phosphor bronze': 'Copper with tin and a trace of phosphorus; springy.',
  "jewellers' bronze": 'Copper with about a tenth of zinc, warm gold in colour.',
  'gold-filled':
    'A layer of gold pressed on to a core of other metal: thicker than plating, and no solid gold.',
  'galvanised steel': 'Steel under a coat of zinc. It must not be heated.',
  patina: 'The darkening of metal by time or by a chemical.',
  'liver of sulphur': 'A sulphur compound that darkens silver and copper.',
  'pickle solution': 'A warm acid bath that takes oxide off metal after heating.',
  'chain-nose pliers': 'Pliers with slim jaws that taper to a point and are flat and smooth inside.',
  'flat-nose pliers': 'Pliers with broad, flat, smooth jaws.',
  'bent-nose pliers': 'Chain-nose pliers whose tips are bent aside, to reach in beside a ring.',
  'round-nose pliers':
    'Pliers with round jaws, for bending loops; they mark rings that are closed with them.',
  'flush cutters': 'Cutters that leave one of the two wire ends flat.',
  'end cutters': 'Cutters whose blades lie across the end of the jaws.',
  calliper: 'A sliding gauge that measures thickness and width to a tenth of a millimetre or finer.',
  byzantine: 'A square chain of pairs, of which every third is folded back and locked by the next.',
  'European 4-in-1':
    'A weave in which every ring goes through four others, two before it and two after; rows lean to one side and the other in turn.',
  'half Persian 4-in-1':
    'A weave in which every ring goes through four others, and which grows sideways along an edge.',
  'box chain': 'A square chain of pairs that are folded back at every step.',
  'mobius unit': 'Rings that each go through all the others and lie round each other like a flower.',
};

const PAIR: ExplainedTerm = {
  term: 'pair',
  forms: ['pairs'],
  meaning: 'Two rings on the same path, side by side, which are handled as one.',
};

/** By forms that mean it and nothing else: pupils have eyes, too. */
const EYE: ExplainedTerm = {
  term: 'the eye',
  forms: [
    ...['the eyes', 'an eye', 'this eye', 'that eye', 'next eye', 'last eye', 'eye of the ring'],
    ...['eye of the pair', 'eyes of the pair', 'eyes of the rings'],
  ],
  meaning:
    'The opening between rings that lie over each other, where the next ring goes through. Not the hole of one ring alone.',
};

/** Terms of the trade that are explained, with their forms. */
export const EXPLAINED_TRADE_TERMS: readonly ExplainedTerm[] = [
  ...TRADE_TERMS.flatMap(({ term, forms }) => {
    const meaning = MEANINGS[term];
    return meaning === undefined ? [] : [{ term, forms, meaning }];
  }),
  PAIR,
  EYE,
];
