/** Adds what a copy of a workshop holds beside its lessons. What the workshop has already stays as it is. */
import type { Queries } from '#lib/data/database.ts';
import { addDecision, findDecisions, findOwnTerms, putOwnTerm } from '#lib/data/glossary.ts';
import { findStock, putStock } from '#lib/data/stock.ts';
import type { PortableWorkshop } from '#lib/portable/portable-workshop.ts';
import type { CopyPlace } from './copy-place.ts';

export async function addToWorkshop(tx: Queries, at: CopyPlace, copy: PortableWorkshop): Promise<void> {
  const { workshopId } = at;
  const counted = new Set((await findStock(tx, workshopId)).map(({ key }) => key));
  for (const item of copy.stock) if (!counted.has(item.key)) await putStock(tx, workshopId, item);

  const known = new Set((await findOwnTerms(tx, workshopId)).map(({ term }) => term));
  for (const term of copy.glossary) {
    if (known.has(term.term)) continue;
    known.add(term.term);
    await putOwnTerm(tx, workshopId, { id: at.idFor(`term ${term.term}`), ...term }, at.now);
  }
  const pairOf = ({ heard, instead }: { heard: string; instead: string }): string =>
    JSON.stringify([heard, instead]);
  const decided = new Set((await findDecisions(tx, workshopId)).map(pairOf));
  for (const decision of copy.heard) {
    if (decided.has(pairOf(decision))) continue;
    decided.add(pairOf(decision));
    await addDecision(tx, workshopId, decision, at.now);
  }
  if (at.isOwner) await takeSettings(tx, workshopId, copy);
}

/** What a workshop says of itself is taken over where it says nothing yet. */
async function takeSettings(tx: Queries, workshopId: string, copy: PortableWorkshop): Promise<void> {
  const { about, descriptionSetup } = await tx.workshop.findUniqueOrThrow({
    where: { id: workshopId },
    select: { about: true, descriptionSetup: true },
  });
  await tx.workshop.update({
    where: { id: workshopId },
    data: {
      ...(about.trim() === '' ? { about: copy.about } : {}),
      ...(descriptionSetup === null && copy.descriptionSetup
        ? { descriptionSetup: JSON.parse(JSON.stringify(copy.descriptionSetup)) }
        : {}),
    },
  });
}
