/**
 * Puts a page into the dress that it is printed in: what its styles say for
 * print holds, what they say for screens does not (CSSOM, CSSMediaRule.media).
 */
export function dressForPaper(page: Document): void {
  for (const sheet of page.styleSheets) dress(sheet.cssRules);
  // Browsers print no backgrounds unless they are told to.
  page.documentElement.style.background = '#fff';
  for (const part of page.querySelectorAll('details')) part.open = true;
}

function dress(rules: CSSRuleList): void {
  for (const rule of rules) {
    if (rule instanceof CSSMediaRule || rule.constructor.name === 'CSSMediaRule') {
      const { media } = rule as CSSMediaRule;
      if (/\bprint\b/.test(media.mediaText))
        media.mediaText = media.mediaText.replaceAll(/\bprint\b/g, 'all');
      else if (/\bscreen\b/.test(media.mediaText)) media.mediaText = 'not all';
    }
    if ('cssRules' in rule && rule.cssRules instanceof Object) dress(rule.cssRules as CSSRuleList);
  }
}
