/** What a later content changes in kits that were packed by an earlier one. */
import { type ExchangeLine, exchangeOf, type PackedPart } from '#lib/kit/kit-exchange.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import type { RecordedBatch } from '#lib/kit/recorded-batch.ts';
import type { Content } from './content.ts';

export interface BatchChange {
  /** Sizes whose kit can be reckoned then and now. */
  readonly parts: readonly PackedPart[];
  readonly lines: readonly ExchangeLine[];
  /** Names of sizes for which one of the two gives no kit. */
  readonly unknown: readonly string[];
}

export function batchChange(
  { kits, rule }: Pick<RecordedBatch, 'kits' | 'rule'>,
  held: Content,
  now: Content,
): BatchChange {
  const compared = kits.map(({ name, bodyMm, times }) => ({
    name,
    times,
    held: kitFor(held, bodyMm),
    now: kitFor(now, bodyMm),
  }));
  const parts = compared.flatMap((part) =>
    part.held.ok && part.now.ok ? [{ ...part, held: part.held.value, now: part.now.value }] : [],
  );
  return {
    parts,
    lines: exchangeOf(parts, rule),
    unknown: compared.filter((part) => !part.held.ok || !part.now.ok).map(({ name }) => name),
  };
}

/** Whether anything has to be picked, or cannot be told. */
export const changesKits = ({ lines, unknown }: BatchChange): boolean =>
  lines.length > 0 || unknown.length > 0;
