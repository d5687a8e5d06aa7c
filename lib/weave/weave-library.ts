/**
 * Weaves to start from, each written down as a ring sequence. Their names and
 * ways of making are common practice; the words are ours. What the sequences
 * claim is held against counts of links in tests/standards/weaves.test.ts.
 */
import { CHAINS } from './weaves/chains.ts';
import { PERSIAN } from './weaves/persian.ts';
import { SHEETS } from './weaves/sheets.ts';
import { TWISTED } from './weaves/twisted.ts';
import type { Weave } from './weaves/weave.ts';

export type { Weave } from './weaves/weave.ts';

export const WEAVES: readonly Weave[] = [...CHAINS, ...PERSIAN, ...TWISTED, ...SHEETS];

/** The stored weave of that id, or null. */
export const findWeave = (id: string): Weave | null => WEAVES.find((weave) => weave.id === id) ?? null;
