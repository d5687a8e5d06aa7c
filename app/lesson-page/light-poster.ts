/**
 * The poster of a public page. It is the largest thing that a pupil sees
 * first, so the light one comes inside the page: on a slow line a picture that
 * has to be asked for comes a round trip later than all else.
 *
 * It travels in the page's HTML alone. What React sends along for the browser
 * names its address; a picture among that would come twice.
 */
import { LRUCache } from 'lru-cache';
import type { MadeFile } from '#lib/lesson/made-files.ts';
import type { Storage } from '#lib/storage/storage.ts';
import type { PageAddresses } from './page-addresses.ts';
import './poster-in-page.ts';

/** Bytes. A heavier one would hold up the words behind it longer than a round trip. */
const MOST_INSIDE = 20_000;

/** As `data:` addresses (RFC 2397), each up to 27 kB of text. One that has gone is asked for by its address. */
const kept = globalThis.picturesInPages ?? new LRUCache<string, string>({ max: 32 });
globalThis.picturesInPages = kept;

/** The poster's address, null where there is none; a light one is kept to be written into the page. */
export async function posterOf(
  storage: Storage,
  { posterKey, madeFiles }: { readonly posterKey: string | null; readonly madeFiles: readonly MadeFile[] },
  addresses: Pick<PageAddresses, 'poster' | 'madeFile'>,
): Promise<string | null> {
  if (posterKey === null) return null;
  const light = madeFiles.find(isLightPoster);
  const end = light ? await storage.size(light.storageKey) : null;
  if (!light || end === null) return addresses.poster;
  const address = addresses.madeFile('poster.webp');
  if (end <= MOST_INSIDE) {
    const bytes = await new Response(storage.read(light.storageKey, { start: 0, end })).bytes();
    kept.set(address, `data:image/webp;base64,${Buffer.from(bytes).toString('base64')}`);
  }
  return address;
}

const isLightPoster = (file: MadeFile): file is MadeFile & { readonly state: 'ready' } =>
  file.name === 'poster.webp' && file.state === 'ready';
