/**
 * Cautions that a lesson can carry, in our own words, and which of them fit
 * what a lesson uses. They are common practice at the bench, from memory
 * except where a source is named; each leaves the last word to the rules of
 * the place, the maker's papers or somebody licensed to judge. A teacher may
 * reword any of them in her lesson.
 */
import type { Caution, Content } from './content.ts';

export interface OfferedCaution {
  /** Kept in content as `caution.of`; never changes its meaning. */
  readonly id: string;
  /** Two or three words for lists. */
  readonly title: string;
  readonly text: string;
}

interface Rule extends OfferedCaution {
  readonly fits: (content: Content) => boolean;
}

const metalsOf = (content: Content): string =>
  content.ringKinds.map((kind) => `${kind.metal} ${kind.metalName}`.replaceAll('-', ' ')).join('\n');
const materialsOf = (content: Content): string =>
  content.materials.map((item) => `${item.name} ${item.note}`).join('\n');

const metal =
  (pattern: RegExp) =>
  (content: Content): boolean =>
    pattern.test(metalsOf(content));
const material =
  (pattern: RegExp) =>
  (content: Content): boolean =>
    pattern.test(materialsOf(content));
const holds =
  (...kinds: readonly Content['materials'][number]['kind'][]) =>
  (content: Content): boolean =>
    content.materials.some(({ kind }) => kinds.includes(kind));
const weaves = (content: Content): boolean =>
  content.ringKinds.length > 0 || content.start.length + content.repeat.length + content.finishing.length > 0;

const RULES: readonly Rule[] = [
  {
    id: 'flying-ends',
    title: 'Flying wire ends',
    text: 'Cut wire flies. Wear safety glasses whenever wire is wound, snipped or sawn, hold a hand over the end that comes off, and keep hair, sleeves and gloves away from anything that turns. Follow the tool maker’s instructions and the rules of the room you work in.',
    fits: (content) =>
      material(/\b(saws?|snips?|cutters?|nippers?|shears|mandrels?|winders?|wire|coils?)\b/i)(content),
  },
  {
    id: 'nickel',
    title: 'Nickel and skin',
    text: 'This metal contains nickel. Some people’s skin reacts to it, and many places limit how much nickel jewellery may release (in the European Union: REACH, Annex XVII, entry 27). Do not call a piece free of nickel or safe for allergies without test papers, and check the rules where you wear, teach or sell it.',
    fits: metal(/\b(nickel|alpaca|stainless)/i),
  },
  {
    id: 'small-parts',
    title: 'Small parts',
    text: 'Loose small parts can be swallowed or choked on. Keep them from children under three and from animals, and count what is left on the bench. Pieces for children fall under rules of their own: check those of your country before you give or sell one.',
    fits: (content) => weaves(content) || holds('bead', 'finding')(content),
  },
  {
    id: 'strain',
    title: 'Hands and eyes',
    text: 'Work like this is the same small grip hundreds of times. Good light, padded handles and a break every half hour help. Stop when fingers tingle, go numb or hurt, and ask a clinician if it does not pass.',
    fits: (content) => weaves(content) || holds('bead', 'cord')(content),
  },
  {
    id: 'aluminium-rub-off',
    title: 'Grey from bare aluminium',
    text: 'Bare aluminium leaves a grey film on fingers and cloth. Wash rings in warm water with a little soap and dry them before weaving. Keep tumbling shot and scouring powder away from anodised rings: they lose their colour.',
    fits: metal(/\balumini?um/i),
  },
  {
    id: 'green-skin',
    title: 'Copper and skin',
    text: 'Copper and its alloys tarnish, and sweat can leave a green or dark mark on skin. It washes off. Take the piece off if the skin itself reacts, and ask a pharmacist or clinician if that stays.',
    fits: metal(/\b(copper|brass|bronze)/i),
  },
  {
    id: 'zinc-fume',
    title: 'Never heat galvanised rings',
    text: 'Galvanised steel carries zinc. Heated by torch or kiln it gives off fume that makes people ill, so these rings are woven cold only. For work with flame ask somebody trained in it.',
    fits: metal(/\b(galvani[sz]ed|zinc)/i),
  },
  {
    id: 'metal-dust',
    title: 'Dust that burns',
    text: 'Fine swarf of titanium, niobium or aluminium can catch fire from a spark. Sweep it up often, keep it away from flame and grinding, and ask your fire authority or supplier how to store and discard it.',
    fits: (content) =>
      metal(/\b(titanium|niobium|alumini?um)/i)(content) && material(/\b(saw|file|grind|sand)/i)(content),
  },
  {
    id: 'chemicals',
    title: 'Pickle, patina and polish',
    text: 'Pickling and colouring baths burn eyes and skin, and some give off gas. Goggles, gloves and moving air; acid goes into water, never water into acid; never mix baths. Follow the safety data sheet of the very product you use, and your local rules for getting rid of it.',
    fits: material(/\b(pickle|pickling|patina|liver of sul(ph|f)ur|acid|bisul(ph|f)ate|etch|oxidi[sz])/i),
  },
  {
    id: 'polish-dust',
    title: 'Polishing dust',
    text: 'Dust from polishing and sanding does not belong in lungs. Wear a mask that is made for fine dust, work wet or with extraction, and tie back hair at a wheel.',
    fits: material(/\b(polishing|buff|rouge|sandpaper|abrasive|emery)/i),
  },
  {
    id: 'flame',
    title: 'Soldering',
    text: 'Soldering means flame, hot metal and fume. Work on a fireproof surface with moving air and something to put a fire out, quench before you touch, and learn it from somebody qualified before you try alone. Check what your home or workshop insurance and fire rules allow.',
    fits: material(/\b(solder|torch|flux|weld|fusing)/i),
  },
  {
    id: 'melted-ends',
    title: 'Melting cord ends',
    text: 'Molten cord drips, sticks to skin and smokes. Melt ends over a surface that cannot burn, with moving air and water at hand, never press them with bare fingers, and let nobody use a flame who may not do so where you work.',
    fits: material(/\b(lighter|matches|melt|burner|hot knife)/i),
  },
  {
    id: 'glue',
    title: 'Glue',
    text: 'Some glues bond skin within seconds or give off fume. Open windows, keep them from eyes and fingers, and follow the label and safety data sheet of the very product; if it gets into an eye, get medical help.',
    fits: material(/\b(glue|adhesive|cyanoacrylate|resin|epoxy)/i),
  },
  {
    id: 'magnets',
    title: 'Magnets',
    text: 'A magnetic clasp can disturb a pacemaker or another implant: its wearer asks their clinician first. Swallowed magnets injure within hours and are an emergency. Keep them from children.',
    fits: material(/\bmagnet/i),
  },
  {
    id: 'latex',
    title: 'Rubber and latex',
    text: 'Rings of natural rubber can set off a latex allergy. EPDM and silicone hold no latex; if the maker’s papers do not say what a ring is made of, treat it as latex and tell whoever wears it.',
    fits: (content) =>
      metal(/\b(rubber|latex|epdm|silicone)/i)(content) || material(/\b(rubber|latex)/i)(content),
  },
  {
    id: 'long-pieces',
    title: 'Long pieces that catch',
    text: 'A long chain can catch on machines, doors and playground equipment. Take it off at such work, and use a clasp that gives way for anybody who might be caught by it. Nothing of this kind goes round a small child’s neck.',
    fits: (content) => content.sizes.some((size) => size.bodyMm >= 300),
  },
  {
    id: 'metal-words',
    title: 'Names of precious metals',
    text: 'Words such as silver, gold or gold-filled are regulated, and some places want a hallmark from a certain weight. If you sell the piece, check the rules of your country before you write its label.',
    fits: metal(/(?<!nickel )\b(silver|sterling|gold)\b/i),
  },
];

/** Every caution of ours, in the order in which a page shows them. */
export const CAUTIONS: readonly OfferedCaution[] = RULES.map(({ id, title, text }) => ({ id, title, text }));

/** Those of ours that fit what the lesson uses and that it does not carry yet. */
export function offeredCautions(content: Content): readonly OfferedCaution[] {
  const carried = new Set(content.cautions.map((caution) => caution.of));
  return RULES.filter((rule) => !carried.has(rule.id) && rule.fits(content)).map(({ id, title, text }) => ({
    id,
    title,
    text,
  }));
}

/** What a pupil reads: the teacher's own words, or ours where she left them as they are. */
export function cautionWords(caution: Caution): { readonly title: string; readonly text: string } {
  const ours = CAUTIONS.find((offered) => offered.id === caution.of);
  return { title: ours?.title ?? '', text: caution.text.trim() || (ours?.text ?? '') };
}
