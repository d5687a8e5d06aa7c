/** Kits on a page that stands alone: what to lay ready, the kit of each size, and what any other measure takes. */
import { kitRows } from '#app/words/kit-rows.ts';
import { growthSpan } from '#lib/kit/kit-growth.ts';
import { type KitList, kitFor } from '#lib/kit/kit-list.ts';
import { formatMeasure, sizeWords } from '#lib/lesson/asked-measure.ts';
import type { Content } from '#lib/lesson/content.ts';
import { isTool, perWord, quantityWord, ringFacts } from '#lib/lesson/making-words.ts';
import { each, html, joined, Markup, when } from './markup.ts';

/** @param kits places of the sizes whose kits lie in the copy as files */
export function needed(content: Content, kits: ReadonlySet<number>): Markup {
  const list = (title: string, items: Content['materials']): Markup =>
    when(
      items.length > 0,
      () =>
        html`<h3 lang="en">${title}</h3><ul class="items">${each(
          items,
          (item) =>
            html`<li><label><input type="checkbox"><span>${joined([item.name, `${quantityWord(item.quantityMilli, item.unit)} ${perWord(item.per)}`.trim()])}${
              item.note.trim() === '' ? null : html`<br><span class="soft">${item.note}</span>`
            }</span></label></li>`,
        )}</ul>`,
    );
  return html`<section aria-labelledby="kit"><h2 id="kit" lang="en">What you need</h2>
${when(
  content.ringKinds.length > 0,
  () =>
    html`<h3 lang="en">Rings</h3><ul class="items">${each(
      content.ringKinds,
      (kind) =>
        html`<li><strong>${kind.name}</strong> <span class="soft" lang="en">${ringFacts(kind)}</span></li>`,
    )}</ul>`,
)}
${each(content.sizes, (size, index) => kitTable(content, size, kits.has(index) ? index : null))}
${otherMeasures(content)}
${list(
  'Other materials',
  content.materials.filter((item) => !isTool(item)),
)}
${list('Tools', content.materials.filter(isTool))}
</section>`;
}

function kitTable(content: Content, size: Content['sizes'][number], file: number | null): Markup {
  const kit = kitFor(content, size.bodyMm);
  if (!kit.ok || kit.value.rings.length === 0) return new Markup('');
  const { rings, totals } = kitRows(kit.value);
  const { length } = kit.value;
  return html`<div class="table" lang="en"><table>
<caption>${sizeWords(size)}${length ? `: ${length.repeats} repeats, ${formatMeasure(length.finishedMm, 'mm')} finished` : ''}</caption>
<thead><tr><th scope="col">Rings</th><th scope="col" class="n">Opened</th><th scope="col" class="n">Closed</th><th scope="col" class="n">Spare</th><th scope="col" class="n">Needed</th></tr></thead>
<tbody>${each(
    rings,
    (row) =>
      html`<tr><th scope="row" lang="${content.language}">${row.name}</th><td class="n">${row.opened.text}</td><td class="n">${row.closed.text}</td><td class="n">${row.spare.text}</td><td class="n">${row.needed.text}</td></tr>`,
  )}</tbody>
<tfoot><tr><th scope="row">Together</th><td class="n">${totals.opened.text}</td><td class="n">${totals.closed.text}</td><td class="n">${totals.spare.text}</td><td class="n">${totals.needed.text}</td></tr></tfoot>
</table>${
    file === null
      ? null
      : html`<p class="files">This kit as a file: <a href="${kitName(file, 'csv')}">CSV</a>, <a href="${kitName(file, 'json')}">JSON</a></p>`
  }</div>`;
}

/** A kit's file in the copy. */
export const kitName = (index: number, ending: 'csv' | 'json'): string => `kit/size-${index + 1}.${ending}`;

/** Measures in millimetres, both reckoned, between which the same kit holds. */
interface KitSpan {
  readonly fromMm: number;
  toMm: number;
  readonly kit: KitList;
}

/** More measures than this are not tried one by one. */
const MOST_MEASURES = 1_000;

/** The kits of every whole millimetre round the lesson's sizes: a page from disk reckons nothing. */
function kitSpans(content: Content): readonly KitSpan[] {
  const [leastMm, mostMm] = growthSpan(content.sizes, null);
  const spans: KitSpan[] = [];
  for (let mm = leastMm; mm <= Math.min(mostMm, leastMm + MOST_MEASURES) && mm > 0; mm++) {
    const kit = kitFor(content, mm);
    if (!kit.ok || kit.value.rings.length === 0 || kit.value.length === null) continue;
    const last = spans.at(-1);
    if (last?.kit.repeats === kit.value.repeats && last.toMm === mm - 1) last.toMm = mm;
    else spans.push({ fromMm: mm, toMm: mm, kit: kit.value });
  }
  return spans;
}

/** Its roles are stated, since a narrow page sets its rows otherwise than as a table. */
function otherMeasures(content: Content): Markup {
  const spans = kitSpans(content);
  return when(
    spans.length > 0,
    () => html`<details lang="en"><summary>Another measure than these</summary><div class="table"><table class="measures" role="table">
<caption>What each measure takes</caption>
<thead role="rowgroup"><tr role="row"><th scope="col" role="columnheader">Measure</th><th scope="col" role="columnheader" class="n">Repeats</th><th scope="col" role="columnheader" class="n">Finished</th><th scope="col" role="columnheader">Rings</th></tr></thead>
<tbody role="rowgroup">${each(spans, spanRow(content.language))}</tbody>
</table></div></details>`,
  );
}

const spanRow =
  (language: string) =>
  ({ fromMm, toMm, kit }: KitSpan): Markup =>
    html`<tr role="row"><th scope="row" role="rowheader">${fromMm === toMm ? `${fromMm} mm` : `${fromMm} to ${toMm} mm`}</th><td role="cell" class="n">${kit.repeats}</td><td role="cell" class="n">${formatMeasure(kit.length?.finishedMm ?? 0, 'mm')}</td><td role="cell">${each(
      kitRows(kit).rings,
      (row) =>
        html`<div><span lang="${language}">${row.name}</span> <strong>${row.needed.text}</strong> <span class="soft">(${row.opened.text} opened, ${row.closed.text} closed, ${row.spare.text} spare)</span></div>`,
    )}</td></tr>`;
