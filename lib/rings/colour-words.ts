/** Colours in words, as picture colours: so that naming a colour is enough to see it. */

const COLOURS: readonly (readonly [RegExp, string])[] = [
  [/\brose gold\b/, '#c98a6b'],
  [/\b(copper)\b/, '#b8643c'],
  [/\b(bronze)\b/, '#a06a35'],
  [/\b(brass|gold(en)?)\b/, '#c9a13b'],
  [/\b(silver|steel|aluminium|bright|grey|gray|titanium)\b/, '#b4b8bc'],
  [/\b(gunmetal|anthracite|charcoal)\b/, '#4c5157'],
  [/\bblack\b/, '#2b2b2b'],
  [/\bwhite\b/, '#f1efe9'],
  [/\bturquoise|teal|aqua\b/, '#2a9d98'],
  [/\bblue\b/, '#2f66b3'],
  [/\bgreen\b/, '#3c8a4a'],
  [/\b(lime)\b/, '#9bbf3b'],
  [/\b(red|ruby)\b/, '#b3302f'],
  [/\b(pink|rose)\b/, '#d9799c'],
  [/\b(purple|violet|lilac)\b/, '#6e4a9e'],
  [/\borange\b/, '#d97a2b'],
  [/\byellow\b/, '#dcb92c'],
  [/\bbrown\b/, '#7a5234'],
];

const SHADES: readonly (readonly [RegExp, number])[] = [
  [/\b(deep|dark|night|midnight)\b/, 0.65],
  [/\b(light|pale|sky|ice|baby)\b/, 1.4],
];

/** `#rrggbb` for words such as `deep blue` or `copper`; null where no colour is named. */
export function colourCodeOf(words: string): string | null {
  const said = words.toLowerCase();
  const base = COLOURS.find(([names]) => names.test(said))?.[1];
  if (!base) return null;
  const shade = SHADES.find(([names]) => names.test(said))?.[1] ?? 1;
  return `#${[1, 3, 5].map((at) => shaded(Number.parseInt(base.slice(at, at + 2), 16), shade)).join('')}`;
}

/** Darker below 1; lighter above it, towards white. */
function shaded(channel: number, shade: number): string {
  const made = shade <= 1 ? channel * shade : channel + (255 - channel) * (shade - 1);
  return Math.round(Math.min(255, made)).toString(16).padStart(2, '0');
}
