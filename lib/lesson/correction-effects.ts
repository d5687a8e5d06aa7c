/**
 * What a correction would put right in the lesson: every place that holds the
 * wrong value, each as an effect that the teacher takes or leaves. A taken
 * effect is a change of the draft like any other, and is noted in the
 * correction, so that it can be taken back and told.
 */
import { metalNameOf } from '#lib/rings/metals.ts';
import { parseSize } from '#lib/rings/parse-size.ts';
import type { Change, Draft } from './change.ts';
import { type Content, type Correction, type CorrectionEffect, SEQUENCE_PARTS } from './content.ts';
import { readField, writeField } from './lesson-field.ts';
import { numberOf, replaceValue, unitsOf, type ValueRule, valueRules } from './replace-value.ts';

export interface ProposedEffect extends CorrectionEffect {
  /** How the thing is called: a title, the name of a ring kind; empty where it has none. */
  readonly name: string;
  /** Its moment in the recording, ms; null where it has none. */
  readonly atMs: number | null;
  /** Whether it is what the correction is about, by its moment or by its thing. */
  readonly isNear: boolean;
}

/** Every effect that is not in the lesson yet: those at the correction's own place first, each group in the lesson's order. */
export function proposeEffects(draft: Draft, correction: Correction): readonly ProposedEffect[] {
  const things = thingsOf(draft);
  const isNear = nearTo(correction, things);
  return [
    ...textEffects(draft, correction, isNear),
    ...countEffects(draft, correction, isNear),
    ...sizeEffects(draft, correction),
    ...newCaution(draft, correction),
  ]
    .map((effect) => seen(effect, things, isNear))
    .toSorted((one, other) => Number(other.isNear) - Number(one.isNear));
}

/** The effects that were taken, with what is told of their places now. */
export function takenEffects(draft: Draft, correction: Correction): readonly ProposedEffect[] {
  const things = thingsOf(draft);
  const isNear = nearTo(correction, things);
  return standingEffects(draft, correction).map((effect) => seen(effect, things, isNear));
}

/** Taken effects but those whose place is gone, or says again what it said before: by an undo, or an earlier content. */
export const standingEffects = (draft: Draft, { effects }: Correction): Correction['effects'] =>
  effects.filter((effect) => {
    const now = readField(draft, effect);
    return now !== null && now !== effect.before;
  });

/** A correction with one effect taken, and what that changes; null where the place holds something else by now. */
export function takeEffect(
  draft: Draft,
  correction: Correction,
  effect: CorrectionEffect,
): readonly Change[] | null {
  const { kind, of, field, before, after } = effect;
  const made = write(draft, effect, before, after);
  if (!made) return null;
  const effects = [...others(correction, effect), { kind, of, field, before, after }];
  const kitsChange = correction.kitsChange || KIT_KINDS.has(kind);
  return [made, { kind: 'put', list: 'corrections', item: { ...correction, effects, kitsChange } }];
}

/** The correction without an effect, and the place as it was; where that was changed since, it is left as it is. */
export function takeBackEffect(
  draft: Draft,
  correction: Correction,
  effect: CorrectionEffect,
): readonly Change[] {
  const made = write(draft, effect, effect.after, effect.before);
  const effects = others(correction, effect);
  return [...(made ? [made] : []), { kind: 'put', list: 'corrections', item: { ...correction, effects } }];
}

const others = ({ effects }: Correction, { of, field }: CorrectionEffect): Correction['effects'] =>
  effects.filter((one) => one.of !== of || one.field !== field);

/** The change that makes one text of the other in an effect's place; null where something else stands there. */
function write(draft: Draft, effect: CorrectionEffect, from: string, to: string): Change | null {
  const { kind, of } = effect;
  const held = readField(draft, effect);
  const isAdded = kind === 'caution' && effect.before === '';
  if (!isAdded) return held === from ? writeField(draft, effect, to) : null;
  if ((held ?? '') !== from) return null;
  if (to === '') return { kind: 'remove', list: 'cautions', id: of };
  return { kind: 'put', list: 'cautions', item: { id: of, of: null, text: to } };
}

/** Effects by which other things lie in a kit. */
const KIT_KINDS: ReadonlySet<string> = new Set(['count', 'ring kind', 'material']);

/** What is told of a thing, by its id. */
interface Thing {
  readonly name: string;
  readonly startMs: number | null;
  readonly endMs: number | null;
}
type Things = ReadonlyMap<string, Thing>;
type IsNear = (of: string) => boolean;

function thingsOf({ content, cues }: Draft): Things {
  const named = (name: string): Thing => ({ name, startMs: null, endMs: null });
  return new Map<string, Thing>([
    ...cues.map(({ id, startMs, endMs }) => [id, { name: '', startMs, endMs }] as const),
    ...content.chapters.map(
      ({ id, title, startMs }) => [id, { name: title, startMs, endMs: startMs + 1 }] as const,
    ),
    ...stepsOf(content).map(
      ({ id, sentence, atMs }) =>
        [id, { name: sentence, startMs: atMs, endMs: atMs === null ? null : atMs + 1 }] as const,
    ),
    ...[...content.ringKinds, ...content.materials].map(({ id, name }) => [id, named(name)] as const),
    ...content.links.map(({ id, label }) => [id, named(label)] as const),
  ]);
}

const stepsOf = (content: Content) => [...SEQUENCE_PARTS.flatMap((part) => content[part]), ...content.steps];

/** Whether a thing is the correction's own: what it is about, or within its span. */
const nearTo =
  ({ of: about, startMs: fromMs, endMs }: Correction, things: Things): IsNear =>
  (of) => {
    const { startMs = null, endMs: lastMs = null } = things.get(of) ?? {};
    if (of === about) return true;
    if (fromMs === null || startMs === null || lastMs === null) return false;
    return startMs < (endMs ?? fromMs + 1) && lastMs > fromMs;
  };

const seen = (effect: CorrectionEffect, things: Things, isNear: IsNear): ProposedEffect => ({
  ...effect,
  name: things.get(effect.of)?.name ?? '',
  atMs: things.get(effect.of)?.startMs ?? null,
  isNear: isNear(effect.of),
});

interface Place extends Pick<CorrectionEffect, 'kind' | 'of' | 'field'> {
  readonly text: string;
}

/** Every text of a lesson, in its order. */
function textPlaces({ content, cues }: Draft): readonly Place[] {
  const all = <T extends { readonly id: string }>(
    kind: Place['kind'],
    items: readonly T[],
    ...fields: readonly (keyof T & string)[]
  ): readonly Place[] =>
    items.flatMap((item) =>
      fields.map((field): Place => ({ kind, of: item.id, field, text: String(item[field]) })),
    );
  const offers = [...content.ringKinds, ...content.materials].flatMap(({ id, offer }): readonly Place[] =>
    offer ? [{ kind: 'link', of: id, field: 'offer/link', text: offer.link }] : [],
  );
  return [
    ...(['title', 'summary', 'weave', 'otherNames', 'licence'] as const).map(
      (of): Place => ({ kind: 'text', of, field: 'value', text: content[of] }),
    ),
    ...all('cue text', cues, 'text'),
    ...all('chapter', content.chapters, 'title'),
    ...all('step', stepsOf(content), 'sentence', 'pictureText'),
    ...all('ring kind', content.ringKinds, 'name', 'colour'),
    ...all('material', content.materials, 'name', 'note'),
    ...all('caution', content.cautions, 'text'),
    ...all('link', content.links, 'label', 'address'),
    ...offers,
  ].filter(({ text }) => text !== '');
}

function textEffects(draft: Draft, correction: Correction, isNear: IsNear): readonly CorrectionEffect[] {
  const rules = valueRules(correction.wrong, correction.right);
  const sure = rules.filter(({ isSure }) => isSure);
  const places = textPlaces(draft);
  const effects = places.flatMap((place) => textEffect(place, correction, sure));
  if (effects.some(({ of }) => isNear(of))) return effects;
  // A bare number is looked for where it was said alone, and only where no more than it is found.
  const own = places.filter(({ kind, of }) => of === correction.of || (kind === 'cue text' && isNear(of)));
  return [...own.flatMap((place) => textEffect(place, correction, rules)), ...effects];
}

function textEffect(
  { kind, of, field, text }: Place,
  correction: Correction,
  rules: readonly ValueRule[],
): readonly CorrectionEffect[] {
  const isAddress = kind === 'link' && field !== 'label';
  const after = isAddress ? addressAfter(text, correction) : replaceValue(text, rules);
  return after === text ? [] : [{ kind, of, field, before: text, after }];
}

/** Addresses are replaced whole: one that only begins alike leads elsewhere. */
const addressAfter = (address: string, { wrong, right }: Correction): string =>
  wrong.trim() === address && /^(https?:\/\/|mailto:)\S+$/i.test(right.trim()) ? right.trim() : address;

/** The one whole number that differs between both values, with every word of them. */
function countsOf({ wrong, right }: Correction) {
  const rule = valueRules(wrong, right).at(-1);
  const numbers = (units: ReturnType<typeof unitsOf>) => units.map(numberOf).filter((one) => one !== null);
  const [was, ...more] = numbers(rule?.wrong ?? []);
  const [is, ...others] = numbers(unitsOf(rule?.right ?? ''));
  if (was === undefined || is === undefined || more.length + others.length > 0) return null;
  if (was === is || !Number.isInteger(was) || !Number.isInteger(is) || is < 1) return null;
  return { was, is, words: new Set(unitsOf(`${wrong} ${right}`).map(({ key }) => key)) };
}

function countEffects(
  { content }: Draft,
  correction: Correction,
  isNear: IsNear,
): readonly CorrectionEffect[] {
  const counts = countsOf(correction);
  if (!counts) return [];
  const { was, is, words } = counts;
  const says = ({ name }: { readonly name: string }): boolean => {
    const units = unitsOf(name);
    return units.length > 0 && units.every(({ key }) => words.has(key));
  };
  const named = ringKindsNamed(content, words);
  const isOfRings = (id: string, ringKind: string): boolean =>
    named.length > 0 ? named.includes(ringKind) : words.has('ring') || isNear(id);
  const effect = (of: string, field: string): CorrectionEffect => ({
    ...{ kind: 'count', of, field },
    before: String(was),
    after: String(is),
  });
  const placements = SEQUENCE_PARTS.flatMap((part) => content[part]);
  return [
    ...placements.flatMap(({ id, carries }) =>
      carries.flatMap(({ ringKind, count }, k) =>
        count === was && isOfRings(id, ringKind) ? [effect(id, `carries/${k}/count`)] : [],
      ),
    ),
    ...content.materials
      .filter((item) => item.quantityMilli === was * 1000 && (says(item) || correction.of === item.id))
      .map(({ id }) => effect(id, 'quantityMilli')),
    ...content.runs
      .filter(({ repeats }) => repeats === was && words.has('repeat'))
      .map(({ id }) => effect(id, 'repeats')),
    ...(['prepareMinutes', 'makeMinutes'] as const)
      .filter((field) => content[field] === was && words.has('minute'))
      .map((field) => effect(field, 'value')),
  ];
}

/** Ids of the ring kinds of whose name, colour and metal most is said; none where nothing is. */
function ringKindsNamed({ ringKinds }: Content, words: ReadonlySet<string>): readonly string[] {
  const said = ringKinds.map((kind) => {
    const keys = unitsOf(`${kind.name} ${kind.colour} ${metalNameOf(kind)}`).map(({ key }) => key);
    return [...new Set(keys)].filter((key) => key !== 'ring' && words.has(key)).length;
  });
  const most = Math.max(...said);
  return most === 0 ? [] : ringKinds.filter((_, k) => said[k] === most).map(({ id }) => id);
}

/** What is right for safety is a caution too, where none says it yet. */
function newCaution({ content }: Draft, { id, kind, right }: Correction): readonly CorrectionEffect[] {
  const text = right.trim();
  const of = `caution-${id}`.slice(0, 64);
  const isSaid = content.cautions.some((caution) => caution.id === of || caution.text.includes(text));
  if (kind !== 'safety' || text === '' || isSaid) return [];
  return [{ kind: 'caution', of, field: 'text', before: '', after: text }];
}

/** Ring kinds whose stated size is the wrong one; a size without its system is never taken for one. */
function sizeEffects({ content }: Draft, correction: Correction): readonly CorrectionEffect[] {
  return content.ringKinds.flatMap((ringKind) =>
    (['wire', 'innerDiameter'] as const).flatMap((field): readonly CorrectionEffect[] => {
      const of = field === 'wire' ? 'wire' : 'inner diameter';
      const wrong = parseSize(sizeIn(correction.wrong), of);
      const right = parseSize(sizeIn(correction.right), of);
      const before = ringKind[field].stated;
      if (!wrong.ok || !right.ok || wrong.value.mm !== ringKind[field].mm) return [];
      if (right.value.stated === before) return [];
      return [{ kind: 'ring kind', of: ringKind.id, field, before, after: right.value.stated }];
    }),
  );
}

/** A size without the words around it: `the wire is 18 SWG.` */
const sizeIn = (text: string): string =>
  text
    .trim()
    .replace(/[.!]$/, '')
    .replace(/^(?:the )?(?:wire|inner diameter|ring)s?(?: is| are)? /i, '');
