/**
 * The poster of a public page. It is the largest thing that a pupil sees
 * first, so the light one comes inside the page: on a slow line a picture that
 * has to be asked for comes a round trip later than all else.
 */
import type { MadeFile } from '#lib/lesson/made-files.ts';
import type { Storage } from '#lib/storage/storage.ts';
import type { PageAddresses } from './page-addresses.ts';

/** Bytes. A heavier one would hold up the words behind it longer than a round trip. */
const MOST_INSIDE = 20_000;

/** An address of the poster, `data:` (RFC 2397) where it can stand inside the page; null where there is none. */
export async function posterOf(
  storage: Storage,
  { posterKey, madeFiles }: { readonly posterKey: string | null; readonly madeFiles: readonly MadeFile[] },
  addresses: Pick<PageAddresses, 'poster' | 'madeFile'>,
): Promise<string | null> {
  if (posterKey === null) return null;
  const light = madeFiles.find(isLightPoster);
  const end = light ? await storage.size(light.storageKey) : null;
  if (!light || end === null) return addresses.poster;
  if (end > MOST_INSIDE) return addresses.madeFile('poster.webp');
  const bytes = await new Response(storage.read(light.storageKey, { start: 0, end })).bytes();
  return `data:image/webp;base64,${Buffer.from(bytes).toString('base64')}`;
}

const isLightPoster = (file: MadeFile): file is MadeFile & { readonly state: 'ready' } =>
  file.name === 'poster.webp' && file.state === 'ready';
