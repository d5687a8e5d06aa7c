/**
 * Cases that nobody here wrote (STANDARDS bodies' and other projects' test
 * files). They lie beside the repository, in ../shared/suites, and are never
 * copied into it; where they are absent their tests say so aloud.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const SUITES = fileURLToPath(new URL('../../../shared/suites/', import.meta.url));

/** Whether a collection is there; says aloud when it is not. */
export function haveOutsideCases(collection: string): boolean {
  const there = existsSync(SUITES + collection);
  if (!there) console.log(`skipped: outside cases not present (${collection})`);
  return there;
}

export const outsideBytes = (path: string): Uint8Array => readFileSync(SUITES + path);

export const outsideText = (path: string): string => new TextDecoder().decode(outsideBytes(path));

/** JSON of a collection, in the shape that the caller knows it to have. */
export const outsideJson = <T>(path: string): T => JSON.parse(outsideText(path)) as T;

/** Names of the files in a collection's folder. */
export const outsideFiles = (folder: string): readonly string[] => readdirSync(SUITES + folder).sort();
