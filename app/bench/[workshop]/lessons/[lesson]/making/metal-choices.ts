/** Metals to choose from: the table's, those that the lesson named itself, and another one. */
import { METALS } from '#lib/rings/metals.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';

const OWN = 'own/';

const ownMetals = (kinds: readonly RingKind[]): readonly string[] => [
  ...new Set(
    kinds.filter((kind) => kind.metal === 'other' && kind.metalName.trim() !== '').map((k) => k.metalName),
  ),
];

export const metalChoices = (kinds: readonly RingKind[]): readonly (readonly [string, string])[] => [
  ...METALS.map((metal) => [metal.id, metal.name] as const),
  ...ownMetals(kinds).map((name) => [`${OWN}${name}`, `${name} (yours)`] as const),
  ['other', 'another metal'],
];

/** What a ring kind takes over from a choice; a metal of the lesson's own brings its density. */
export function metalOf(
  choice: string,
  kinds: readonly RingKind[],
): Pick<RingKind, 'metal' | 'metalName' | 'densityGPerCm3'> {
  if (choice === 'other') return { metal: 'other', metalName: '', densityGPerCm3: null };
  if (!choice.startsWith(OWN)) return { metal: choice, metalName: '', densityGPerCm3: null };
  const metalName = choice.slice(OWN.length);
  const like = kinds.find((kind) => kind.metal === 'other' && kind.metalName === metalName);
  return { metal: 'other', metalName, densityGPerCm3: like?.densityGPerCm3 ?? null };
}
