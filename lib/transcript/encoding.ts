/**
 * From bytes to text. A byte order mark decides; else bytes that are valid
 * UTF-8 are UTF-8 (other text practically never is by chance); else nobody but
 * the reader of the text can tell, so a question is asked, with a line of the
 * text in each encoding that fits. Never guessed silently.
 */

/** Encodings that can be chosen, with the words for them; WHATWG Encoding labels, and UTF-32 beside them. */
export const ENCODINGS = {
  'utf-8': 'Unicode (UTF-8)',
  'utf-16le': 'Unicode (UTF-16, little end first)',
  'utf-16be': 'Unicode (UTF-16, big end first)',
  'utf-32le': 'Unicode (UTF-32, little end first)',
  'utf-32be': 'Unicode (UTF-32, big end first)',
  'windows-1252': 'Western European (Windows-1252)',
  'windows-1250': 'Central European (Windows-1250)',
  'iso-8859-2': 'Central European (ISO 8859-2)',
  'windows-1251': 'Cyrillic (Windows-1251)',
  'koi8-r': 'Cyrillic (KOI8-R)',
  'windows-1253': 'Greek (Windows-1253)',
  'windows-1254': 'Turkish (Windows-1254)',
  'windows-1255': 'Hebrew (Windows-1255)',
  'windows-1256': 'Arabic (Windows-1256)',
  'windows-1257': 'Baltic (Windows-1257)',
  gb18030: 'Chinese, simplified (GB 18030)',
  big5: 'Chinese, traditional (Big5)',
  shift_jis: 'Japanese (Shift JIS)',
  'euc-jp': 'Japanese (EUC-JP)',
  'euc-kr': 'Korean (EUC-KR)',
  macintosh: 'Western European (old Macintosh)',
} as const;

export type Encoding = keyof typeof ENCODINGS;
export const isEncoding = (name: string): name is Encoding => Object.hasOwn(ENCODINGS, name);

/** One answer to "which encoding?": what a telling line would read like. */
export interface EncodingCandidate {
  readonly encoding: Encoding;
  readonly label: string;
  readonly sample: string;
}

type DecodedBytes =
  | { readonly kind: 'text'; readonly encoding: Encoding; readonly text: string }
  | { readonly kind: 'unsure'; readonly candidates: readonly EncodingCandidate[] };

const MARKS: readonly (readonly [Encoding, readonly number[]])[] = [
  ['utf-8', [0xef, 0xbb, 0xbf]],
  // Before UTF-16, whose mark it begins with.
  ['utf-32le', [0xff, 0xfe, 0, 0]],
  ['utf-32be', [0, 0, 0xfe, 0xff]],
  ['utf-16le', [0xff, 0xfe]],
  ['utf-16be', [0xfe, 0xff]],
];

/** Decodes a file, or gives the encodings that it may have, the likeliest first. */
export function decodeBytes(bytes: Uint8Array): DecodedBytes {
  const marked = MARKS.find(([, mark]) => mark.every((byte, index) => bytes[index] === byte));
  if (marked) return { kind: 'text', encoding: marked[0], text: decodeAs(bytes, marked[0]) };
  const declared = declaredEncoding(bytes);
  if (declared && fits(bytes, declared))
    return { kind: 'text', encoding: declared, text: decodeAs(bytes, declared) };
  // Text holds no NUL, but UTF-16 and UTF-32 do, and plain letters with NULs between are valid UTF-8.
  const wide = shareOfNul(bytes) > 0.2;
  if (!wide && fits(bytes, 'utf-8'))
    return { kind: 'text', encoding: 'utf-8', text: decodeAs(bytes, 'utf-8') };
  return { kind: 'unsure', candidates: candidatesFor(bytes, wide) };
}

/** Decodes as told; what does not fit becomes U+FFFD. A byte order mark is left out. */
export function decodeAs(bytes: Uint8Array, encoding: Encoding): string {
  if (encoding === 'utf-32le' || encoding === 'utf-32be') return decodeUtf32(bytes, encoding === 'utf-32le');
  return new TextDecoder(encoding).decode(bytes);
}

/** What an XML declaration says, where we know the encoding and a declaration can be true of it. */
function declaredEncoding(bytes: Uint8Array): Encoding | null {
  const head = String.fromCharCode(...bytes.subarray(0, 200));
  const name = /^\s*<\?xml\s[^>]*?encoding\s*=\s*["']([\w-]+)["']/.exec(head)?.[1]?.toLowerCase();
  if (!name) return null;
  // Latin 1 as the Web reads it (WHATWG Encoding, section 4.2).
  if (name === 'iso-8859-1' || name === 'us-ascii') return 'windows-1252';
  return isEncoding(name) && !name.startsWith('utf-16') && !name.startsWith('utf-32') ? name : null;
}

function candidatesFor(bytes: Uint8Array, wide: boolean): readonly EncodingCandidate[] {
  const wideOnes: readonly Encoding[] = ['utf-16le', 'utf-16be', 'utf-32le', 'utf-32be'];
  const names = (Object.keys(ENCODINGS) as Encoding[]).filter((name) => wideOnes.includes(name) === wide);
  const fitting = names.filter((name) => fits(bytes, name));
  const place = telling(bytes);
  const texts = (fitting.length > 0 ? fitting : names).map((encoding) => ({
    encoding,
    text: decodeAs(bytes, encoding),
  }));
  // Where two encodings give the very same text there is nothing to choose between them.
  const first = new Map(texts.toReversed().map(({ encoding, text }) => [text, encoding]));
  return texts
    .filter(({ encoding, text }) => first.get(text) === encoding)
    .map(({ encoding, text }) => ({ encoding, odd: oddness(text), sample: sampleOf(text, place) }))
    .sort((a, b) => a.odd - b.odd)
    .map(({ encoding, sample }) => ({ encoding, label: ENCODINGS[encoding], sample }));
}

function fits(bytes: Uint8Array, encoding: Encoding): boolean {
  if (encoding.startsWith('utf-32')) return !decodeAs(bytes, encoding).includes('\uFFFD');
  try {
    new TextDecoder(encoding, { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

/**
 * How unlike speech a text looks: control characters, private ones, signs
 * between letters, capitals behind small letters. Only the order of the
 * question's answers hangs on it.
 */
function oddness(text: string): number {
  const part = text.slice(0, 200_000);
  const count = (pattern: RegExp): number => part.match(pattern)?.length ?? 0;
  return (
    count(/[[\p{Cc}\p{Co}\p{Cn}\uFFFD]--[\t\n\r]]/gv) * 5 +
    count(/(?<=\p{L})[\p{S}\p{No}\u00a0-\u00bf]|[\p{S}\p{No}\u00a1-\u00bf](?=\p{L})/gu) * 2 +
    count(/(?<=\p{Ll})\p{Lu}/gu) * 2 +
    // Single-byte letters of two writings in one word, and half-width forms, which speech hardly has.
    count(/(?<=[a-z])[\p{sc=Cyrl}\p{sc=Grek}\p{sc=Hebr}\p{sc=Arab}\p{sc=Hani}\p{sc=Hang}\uff61-\uff9f]/gu) *
      2 +
    count(/[\uff61-\uff9f]/g) +
    count(/\P{ASCII}/gu) * 0.1
  );
}

/** Line of the first byte beyond ASCII, from 0; null where there is none. */
function telling(bytes: Uint8Array): number | null {
  let line = 0;
  for (const byte of bytes) {
    if (byte >= 0x80) return line;
    if (byte === 0x0a) line += 1;
  }
  return null;
}

/** The telling line, or the first that has letters, shortened about its first character beyond ASCII. */
function sampleOf(text: string, line: number | null): string {
  const lines = text.split('\n');
  const told =
    (line === null ? '' : (lines[line] ?? '')).trim() ||
    (lines.find((one) => /\p{L}/u.test(one)) ?? '').trim();
  const characters = [...told];
  const at = Math.max(0, characters.findIndex((character) => character > '\u007f') - 30);
  return characters.slice(at, at + 90).join('');
}

function shareOfNul(bytes: Uint8Array): number {
  const part = bytes.subarray(0, 4_096);
  let nul = 0;
  for (const byte of part) if (byte === 0) nul += 1;
  return part.length === 0 ? 0 : nul / part.length;
}

/** TextDecoder knows no UTF-32. */
function decodeUtf32(bytes: Uint8Array, littleEnd: boolean): string {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let text = '';
  for (let at = 0; at + 4 <= bytes.byteLength; at += 4) {
    const point = view.getUint32(at, littleEnd);
    const surrogate = point >= 0xd800 && point <= 0xdfff;
    text += point > 0x10ffff || surrogate ? '\uFFFD' : String.fromCodePoint(point);
  }
  if (bytes.byteLength % 4 > 0) text += '\uFFFD';
  return text.startsWith('\uFEFF') ? text.slice(1) : text;
}
