/**
 * How a word sounds that no dictionary knows: letters to sounds by rules of
 * English spelling, longest match first. A rough ear: good enough to find
 * that `maille` sounds like `mail`. The rules are our own.
 */

/** `^` stands for the word's beginning, `$` for its end. Vowels are stressed unless marked 0. */
const RULES: readonly (readonly [RegExp, string])[] = (
  [
    ['^kn', 'N'],
    ['^gn', 'N'],
    ['^wr', 'R'],
    ['^ps', 'S'],
    ['^x', 'Z'],
    ['^mc', 'M AH0 K'],
    ['tch', 'CH'],
    ['sch', 'SH'],
    ['chr', 'K R'],
    ['ch', 'CH'],
    ['tion', 'SH AH0 N'],
    ['ssion', 'SH AH0 N'],
    ['sion', 'ZH AH0 N'],
    ['cian', 'SH AH0 N'],
    ['ture$', 'CH ER0'],
    ['sh', 'SH'],
    ['ph', 'F'],
    ['th', 'TH'],
    ['wh', 'W'],
    ['ck', 'K'],
    ['qu', 'K W'],
    ['dge', 'JH'],
    ['ng$', 'NG'],
    ['ng(?=[bcdfkmpstw])', 'NG'],
    ['nk', 'NG K'],
    ['igh', 'AY1'],
    ['eigh', 'EY1'],
    ['augh', 'AO1'],
    ['ough', 'AO1'],
    ['aille$', 'EY1 L'],
    ['ette$', 'EH1 T'],
    ['ine$', 'IY1 N'],
    ['ium$', 'IY0 AH0 M'],
    ['ious$', 'IY0 AH0 S'],
    ['ous$', 'AH0 S'],
    ['i[sz]ed$', 'AY1 Z D'],
    ['rel$', 'R AH0 L'],
    ['ial$', 'IY0 AH0 L'],
    ['ise$', 'AY1 Z'],
    ['ia$', 'IY0 AH0'],
    ['([^aeiouy])le$', '* AH0 L'],
    ['([^aeiouy])les$', '* AH0 L Z'],
    ['([td])ed$', '* AH0 D'],
    ['([pkfsxcth])ed$', '* T'],
    ['([^aeiouy])ed$', '* D'],
    ['([sxz]|ch|sh)es$', '* AH0 Z'],
    ['er$', 'ER0'],
    ['ers$', 'ER0 Z'],
    ['or$', 'ER0'],
    ['ar$', 'AA1 R'],
    ['ing$', 'IH0 NG'],
    ['a(?=[bcdfghjklmnpqrstvz]e$)', 'EY1'],
    ['i(?=[bcdfghjklmnpqrstvz]e$)', 'AY1'],
    ['o(?=[bcdfghjklmnpqrstvz]e$)', 'OW1'],
    ['u(?=[bcdfghjklmnpqrstvz]e$)', 'UW1'],
    ['e(?=[bcdfghjklmnpqrstvz]e$)', 'IY1'],
    ['aw', 'AO1'],
    ['au', 'AO1'],
    ['ai', 'EY1'],
    ['ay', 'EY1'],
    ['ea', 'IY1'],
    ['ee', 'IY1'],
    ['ei', 'EY1'],
    ['ey$', 'IY0'],
    ['ey', 'EY1'],
    ['eu', 'UW1'],
    ['ew', 'UW1'],
    ['ie$', 'IY0'],
    ['ie', 'IY1'],
    ['oa', 'OW1'],
    ['oi', 'OY1'],
    ['oo', 'UW1'],
    ['ou', 'AW1'],
    ['ow$', 'OW1'],
    ['ow', 'AW1'],
    ['oy', 'OY1'],
    ['ue$', 'UW1'],
    ['ui', 'UW1'],
    ['uy', 'AY1'],
    ['er', 'ER1'],
    ['ir', 'ER1'],
    ['ur', 'ER1'],
    ['or', 'AO1 R'],
    ['ar', 'AA1 R'],
    ['e$', ''],
    ['es$', 'Z'],
    ['o$', 'OW1'],
    ['y$', 'IY0'],
    ['a$', 'AH0'],
    ['^y', 'Y'],
    ['y', 'IH1'],
    ['c(?=[eiy])', 'S'],
    ['cc', 'K'],
    ['c', 'K'],
    ['gg', 'G'],
    ['g(?=[eiy])', 'JH'],
    ['gh', 'G'],
    ['g', 'G'],
    ['bb?', 'B'],
    ['dd?', 'D'],
    ['ff?', 'F'],
    ['h', 'HH'],
    ['j', 'JH'],
    ['kk?', 'K'],
    ['ll?', 'L'],
    ['mm?', 'M'],
    ['nn?', 'N'],
    ['pp?', 'P'],
    ['q', 'K'],
    ['rr?', 'R'],
    ['ss', 'S'],
    ['s(?=[aeiou])(?<=[aeiou]s)', 'Z'],
    ['s$(?<=[aeioubdglmnrvwy]s)', 'Z'],
    ['s', 'S'],
    ['tt?', 'T'],
    ['v', 'V'],
    ['w', 'W'],
    ['x', 'K S'],
    ['zz?', 'Z'],
    ['a', 'AE1'],
    ['e', 'EH1'],
    ['i', 'IH1'],
    ['o', 'AA1'],
    ['u', 'AH1'],
  ] as const
).map(([pattern, sounds]) => [new RegExp(pattern, 'y'), sounds] as const);

/** ARPAbet of a word by spelling alone; letters beyond a to z are passed over. */
export function soundsByRule(word: string): string {
  const letters = word
    .toLowerCase()
    .normalize('NFD')
    .replace(/[^a-z]/g, '');
  const said: string[] = [];
  let at = 0;
  while (at < letters.length) {
    const rule = ruleAt(letters, at);
    if (!rule) {
      at += 1;
      continue;
    }
    said.push(...rule.sounds);
    at += rule.length;
  }
  return said.join(' ');
}

function ruleAt(letters: string, at: number): { readonly sounds: string[]; readonly length: number } | null {
  for (const [pattern, sounds] of RULES) {
    pattern.lastIndex = at;
    const match = pattern.exec(letters);
    if (!match) continue;
    const kept = sounds.replace('*', match[1] ? soundsByRule(match[1]) : '');
    return { sounds: kept.split(' ').filter((sound) => sound !== ''), length: match[0].length };
  }
  return null;
}
