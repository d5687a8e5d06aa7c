/** Currencies and languages to choose from, by their English names as the runtime's CLDR data has them. */

export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** ISO 4217 codes; `kept` stays in the list even where the runtime does not know it. */
export function currencyChoices(kept: string): readonly Choice[] {
  const names = new Intl.DisplayNames('en', { type: 'currency' });
  return named(
    [...Intl.supportedValuesOf('currency'), kept],
    (code) => `${names.of(code) ?? code} (${code})`,
  );
}

/** Two-letter codes of ISO 639 that have a name; `kept` stays in the list though it says more than that. */
export function languageChoices(kept: string): readonly Choice[] {
  const names = new Intl.DisplayNames('en', { type: 'language', fallback: 'none' });
  const letters = [...'abcdefghijklmnopqrstuvwxyz'];
  const codes = letters.flatMap((first) => letters.map((second) => first + second));
  const current = codes.filter(
    (code) => names.of(code) !== undefined && Intl.getCanonicalLocales(code)[0] === code,
  );
  return named([...current, kept], (code) => names.of(code) ?? code);
}

function named(codes: readonly string[], label: (code: string) => string): readonly Choice[] {
  return [...new Set(codes)]
    .map((value) => ({ value, label: label(value) }))
    .sort((a, b) => a.label.localeCompare(b.label, 'en'));
}
