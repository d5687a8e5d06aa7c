/** Words of an address: what a title or a name becomes in the address of a public page. */

const LONGEST_SLUG = 60;

/**
 * Latin letters, digits and single hyphens made from a text: `Två färger!`
 * becomes `tva-farger`. A text without any such letter gives `otherwise`.
 */
export function slugOf(text: string, otherwise: string): string {
  const plain = text
    .replaceAll(/[ßẞ]/g, 'ss')
    .replaceAll(/[æÆ]/g, 'ae')
    .replaceAll(/[øØ]/g, 'o')
    .replaceAll(/[łŁ]/g, 'l')
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase();
  const words = plain.replaceAll(/['’]/g, '').match(/[a-z0-9]+/g) ?? [];
  let slug = '';
  for (const word of words) {
    const longer = slug === '' ? word.slice(0, LONGEST_SLUG) : `${slug}-${word}`;
    if (longer.length > LONGEST_SLUG) break;
    slug = longer;
  }
  return slug || otherwise;
}

/** The slug itself, or with the first number from 2 on that none of `taken` has: `box-chain-2`. */
export function freeSlug(slug: string, taken: readonly string[]): string {
  const known = new Set(taken);
  if (!known.has(slug)) return slug;
  let number = 2;
  while (known.has(`${slug}-${number}`)) number += 1;
  return `${slug}-${number}`;
}
