/**
 * The trade's own words, as far as jump-ring work is concerned: names of
 * weaves, parts, metals, tools and doings. Common practice; spellings that
 * differ between places are all taken as right. How a term is said is spelled
 * with ordinary words where its letters mislead.
 */
import type { Confusion, GlossaryTerm } from './term.ts';

interface More {
  readonly forms?: readonly string[];
  readonly sounds?: readonly string[];
  readonly confusions?: readonly (Partial<Confusion> & { readonly heard: string })[];
}

const term = (written: string, more: More = {}, everyday = false): GlossaryTerm => ({
  term: written,
  forms: [...(more.forms ?? [])],
  sounds: [...(more.sounds ?? [])],
  confusions: (more.confusions ?? []).map((one) => ({ after: [], before: [], near: [], ...one })),
  everyday,
});

/** A thing that is counted: its plural is right too. */
const noun = (written: string, more: More = {}): GlossaryTerm =>
  term(written, { ...more, forms: [`${written}s`, ...(more.forms ?? [])] });

const everyday = (written: string, more: More = {}): GlossaryTerm =>
  term(written, { ...more, forms: [`${written}s`, ...(more.forms ?? [])] }, true);

const NUMBERS = [
  ...['ten', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen'],
  ...['nineteen', 'twenty', 'one', 'two', 'four', 'six', 'eight', 'thirty', 'sixty', 'eighty'],
  ...['10', '12', '14', '16', '18', '19', '20', '21', '22', '24', '26', '28', '30'],
];
const NAMING = ['the', 'this', 'a', 'an', 'every', 'each', 'that', 'your', 'its', 'of', 'another', 'any'];
const RINGS = ['ring', 'rings', 'chain', 'pair', 'pairs', 'weave', 'clasp', 'wire', 'maille'];
const LINKS = [
  ...[
    ['two', '2'],
    ['three', '3'],
    ['four', '4'],
    ['six', '6'],
    ['eight', '8'],
    ['ten', '10'],
  ].map(([said, figure]) => ({ said: `${said} in one`, figure: `${figure}-in-1` })),
  { said: 'twelve in two', figure: '12-in-2' },
  { said: 'eight in two', figure: '8-in-2' },
  { said: 'two in two', figure: '2-in-2' },
  { said: 'three in three', figure: '3-in-3' },
].map(({ said, figure }) => term(figure, { forms: [said, figure.replaceAll('-', ' ')] }));

const WEAVES: readonly GlossaryTerm[] = [
  term('chain maille', { sounds: ['chain mail'] }),
  term('chain maille weave', { sounds: ['chain mail weave'] }),
  noun('maille weave', { sounds: ['mail weave'] }),
  term("king's maille", { sounds: ['kings mail'] }),
  term('scale maille', { sounds: ['scale mail'] }),
  term('maille', {
    sounds: ['mail'],
    confusions: [
      { heard: 'mail', near: ['weave', 'weaves', 'rings', 'weaving', 'pliers', 'byzantine', 'persian'] },
      { heard: 'male', near: ['weave', 'weaves', 'rings', 'weaving', 'pliers', 'byzantine', 'persian'] },
    ],
  }),
  term('byzantine', { sounds: ['biz an teen', 'by zan tine', 'biz an tine'] }),
  noun('byzantine chain', { sounds: ['biz an teen chain', 'by zan tine chain'] }),
  term('half Persian', { sounds: ['half persian'] }),
  term('full Persian', { sounds: ['full persian'] }),
  noun('Persian weave', { sounds: ['persian weave'] }),
  term('half Persian 4-in-1', { forms: ['half Persian four in one'] }),
  term('half Persian 3-in-1', { forms: ['half Persian three in one'] }),
  term('full Persian 6-in-1', { forms: ['full Persian six in one'] }),
  term('European 4-in-1', { forms: ['European four in one'] }),
  term('European 6-in-1', { forms: ['European six in one'] }),
  term('European', { sounds: ['your a pee an'] }),
  noun('European weave', { sounds: ['your a pee an weave'] }),
  term('Japanese 4-in-1', { forms: ['Japanese four in one'] }),
  term('Japanese 12-in-2', { forms: ['Japanese twelve in two'] }),
  noun('Japanese weave'),
  term('Jens Pind', { sounds: ['yens pinned', 'jens pinned'] }),
  term('Jens Pind linkage', { sounds: ['yens pinned linkage', 'jens pinned linkage'] }),
  term('JPL3', { forms: ['JPL 3', 'JPL three'], sounds: ['j p l three'] }),
  term('JPL5', { forms: ['JPL 5', 'JPL five'], sounds: ['j p l five'] }),
  term('JPL', { sounds: ['j p l'] }),
  noun('box chain'),
  noun('helm chain'),
  noun('cable chain'),
  noun('spiral chain'),
  term('spiral'),
  noun('double chain'),
  term('shaggy loops', { forms: ['shaggy loop'] }),
  noun('rosette', { sounds: ['row zet', 'row set'] }),
  term('mobius', { forms: ['möbius'], sounds: ['moe be us'] }),
  noun('mobius unit', { sounds: ['moe be us unit'] }),
  term('Viking knit'),
  ...LINKS,
];

const PARTS: readonly GlossaryTerm[] = [
  noun('jump ring'),
  noun('open ring', { forms: ['opened ring', 'open copper ring'] }),
  noun('closed ring', {
    confusions: [{ heard: 'clothes ring' }, { heard: 'clothes rings' }],
  }),
  term('close the ring', {
    forms: ['closing the ring'],
    confusions: [{ heard: 'close the rim' }],
  }),
  term('open the ring', { forms: ['opening the ring'] }),
  noun('clasp ring'),
  noun('connector ring'),
  noun('connector'),
  noun('captive ring'),
  noun('flat ring'),
  noun('lobster clasp'),
  noun('toggle clasp'),
  noun('magnetic clasp'),
  noun('box clasp'),
  noun('toggle bar'),
  term('hook and eye', { forms: ['hooks and eyes'] }),
  noun('extender chain'),
  noun('clasp', {
    confusions: [
      {
        heard: 'class',
        near: ['lobster', 'toggle', 'hook', 'magnetic', 'loop', 'ring', 'chain', 'bracelet'],
      },
      {
        heard: 'clash',
        near: ['lobster', 'toggle', 'hook', 'magnetic', 'loop', 'ring', 'chain', 'bracelet'],
      },
    ],
  }),
  noun('ear wire'),
  noun('rubber O-ring', { forms: ['rubber o ring', 'rubber o rings'] }),
  noun('bracelet'),
  noun('anklet'),
  noun('necklace'),
  noun('pendant'),
  noun('repeat unit'),
  noun('starting unit'),
  noun('seam', {
    confusions: [
      { heard: 'seem', after: NAMING, near: [...RINGS, 'catch', 'close', 'side', 'fingertip'] },
      { heard: 'seem', before: ['side'] },
      { heard: 'seems', after: ['the', 'all', 'your', 'both'] },
    ],
  }),
  term('seam side'),
  term('eyes', {
    forms: ['eye'],
    confusions: [{ heard: 'ice', after: ['the'], near: ['pair', 'ring', 'rings', 'between', 'fold'] }],
  }),
  term('eyes of the pair', { forms: ['eye of the pair'] }),
  term('ridge'),
  term('trough'),
];

const DOINGS: readonly GlossaryTerm[] = [
  noun('weave', {
    forms: ['weaving', 'woven', 'wove'],
    confusions: [
      {
        heard: "we've",
        after: ['the', 'this', 'a', 'persian', 'maille', 'byzantine', 'european', 'japanese'],
      },
      {
        heard: 'weaver',
        after: ['the', 'this', 'persian', 'byzantine', 'european', 'japanese'],
        near: RINGS,
      },
      { heard: 'leave', after: ['maille', 'mail', 'persian', 'byzantine', 'european', 'japanese'] },
    ],
  }),
  term('fold back', { forms: ['folded back', 'folding back', 'folds back'] }),
  term('flush close', { forms: ['flush closed', 'close flush', 'closed flush'] }),
  term('speed weaving', { forms: ['speed weave'] }),
  term('left-leaning'),
  term('right-leaning'),
  term('leaning'),
  term('burnish', { forms: ['burnished', 'burnishing', 'burnisher'] }),
  term('anneal', { forms: ['annealed', 'annealing'], sounds: ['a kneel'] }),
  term('deburr', { forms: ['deburred', 'deburring'], sounds: ['dee burr'] }),
  term('oxidise', { forms: ['oxidised', 'oxidize', 'oxidized', 'oxidising', 'oxidizing'] }),
  term('anodised', {
    forms: ['anodized', 'anodise', 'anodize', 'anodising', 'anodizing'],
    sounds: ['an oh dized'],
    confusions: [
      { heard: 'anodyne', near: ['aluminium', 'aluminum', 'ring', 'rings', 'colour', 'blue', 'red'] },
      { heard: 'analyzed', near: ['aluminium', 'aluminum', 'ring', 'rings', 'colour', 'blue', 'red'] },
      { heard: 'analysed', near: ['aluminium', 'aluminum', 'ring', 'rings', 'colour', 'blue', 'red'] },
      { heard: 'an iced' },
    ],
  }),
  term('anodised aluminium', { forms: ['anodized aluminum'], sounds: ['an oh dized aluminum'] }),
  noun('anodised ring', { forms: ['anodized ring', 'anodized rings'], sounds: ['an oh dized ring'] }),
  term('tumble in shot', { forms: ['tumbled in shot'] }),
  term('pull test'),
  term('coil', { forms: ['coils', 'coiled', 'coiling'] }),
  term('springback', { forms: ['spring back', 'springs back'] }),
  term('kerf', {
    forms: ['kerfs'],
    confusions: ['curve', 'curf', 'curb', 'curse'].map((heard) => ({
      heard,
      near: ['saw', 'sawing', 'blade', 'blades', 'cut', 'cuts', 'disc', 'sawn'],
    })),
  }),
];

const SIZES: readonly GlossaryTerm[] = [
  noun('aspect ratio'),
  noun('wire diameter'),
  noun('inner diameter'),
  noun('inside diameter'),
  noun('outer diameter'),
  noun('wire gauge', { forms: ['wire gage', 'wire gages'] }),
  term('gauge', {
    forms: ['gauges', 'gage'],
    confusions: ['gaze', 'gaise', 'gays', 'cage', 'gauche', 'gauze'].map((heard) => ({
      heard,
      after: NUMBERS,
    })),
  }),
  term('standard wire gauge'),
  term('American wire gauge'),
  term('SWG', { sounds: ['s double you g'], forms: ['s w g'] }),
  term('AWG', {
    sounds: ['a double you g'],
    forms: ['a w g'],
    confusions: [{ heard: 'awgee' }, { heard: 'awg' }],
  }),
  term('ID', {
    sounds: ['i d'],
    forms: ['i d'],
    confusions: ['eye dee', 'idea'].map((heard) => ({
      heard,
      near: [
        'inner',
        'diameter',
        'millimetres',
        'millimeters',
        'millimetre',
        'millimeter',
        'mm',
        'inch',
        'gauge',
      ],
    })),
  }),
  term('WD', { sounds: ['double you d'], forms: ['w d'] }),
  term('half-hard', { forms: ['half hard'] }),
  term('dead-soft', { forms: ['dead soft'] }),
  term('spring temper'),
  noun('millimetre', { forms: ['millimeter', 'millimeters'], sounds: ['milly meter'] }),
];

const METALS: readonly GlossaryTerm[] = [
  term('sterling silver'),
  term('fine silver'),
  term('nickel silver'),
  term('argentium'),
  term('aluminium', { forms: ['aluminum'], sounds: ['al you minium', 'a loo minum'] }),
  term('niobium', { sounds: ['nye oh be um'] }),
  term('titanium'),
  term('stainless steel'),
  term('phosphor bronze', { sounds: ['foss for bronze'] }),
  term("jewellers' bronze", { forms: ["jeweller's bronze", 'jewellers bronze', 'jewelers bronze'] }),
  term('gold-filled', { forms: ['gold filled'] }),
  term('galvanised steel', { forms: ['galvanized steel'] }),
  term('enamelled copper', { forms: ['enameled copper'] }),
  term('patina', { sounds: ['pa tina'] }),
  term('liver of sulphur', { forms: ['liver of sulfur'], sounds: ['liver of sulfur'] }),
  term('pickle solution'),
];

const TOOLS: readonly GlossaryTerm[] = [
  noun('mandrel', { confusions: [{ heard: 'mandrill' }, { heard: 'man drill' }] }),
  term('pliers', {
    forms: ['plier'],
    confusions: ['players', 'flyers', 'fliers', 'plyers', 'prayers', 'appliers'].map((heard) => ({
      heard,
      near: [...RINGS, 'jaws', 'jaw', 'hold', 'nose', 'pairs', 'two', 'both', 'grip', 'smooth', 'hand'],
    })),
  }),
  term('chain-nose'),
  term('chain-nose pliers'),
  term('flat-nose'),
  term('flat-nose pliers'),
  term('bent-nose pliers'),
  term('round-nose pliers'),
  term('flush cutters', { forms: ['flush cutter'] }),
  term('end cutters', { forms: ['end cutter'] }),
  noun('calliper', { forms: ['caliper', 'calipers'], sounds: ['cali purr'] }),
  noun('saw blade'),
  term("jeweller's saw", { forms: ["jeweler's saw", 'jewellers saw', 'jewelers saw'] }),
  noun('twist-tie'),
  noun('tumbler'),
  term('steel shot'),
  noun('ring opener'),
  term('tool dip'),
  noun('coiling jig'),
  term('polishing cloth'),
  term('safety glasses'),
];

/** Everyday words that are of the trade too: never suggested, but they tell what is talked of. */
const EVERYDAY: readonly GlossaryTerm[] = [
  ...['ring', 'wire', 'chain', 'link', 'loop', 'pair', 'jaw', 'bead', 'cord'].map((word) => everyday(word)),
  everyday('copper', {
    confusions: [{ heard: 'cooper', near: [...RINGS, 'blue', 'silver', 'colour'] }],
  }),
  everyday('silver'),
  everyday('brass'),
  everyday('bronze'),
];

/** Every term of ours. */
export const TRADE_TERMS: readonly GlossaryTerm[] = [
  ...WEAVES,
  ...PARTS,
  ...DOINGS,
  ...SIZES,
  ...METALS,
  ...TOOLS,
  ...EVERYDAY,
];
