/**
 * Which signs the picture for links can show: those of the faces that it is
 * drawn with. Whatever else a machine has installed must not decide what a
 * card says, nor may a sign become an empty box.
 */
import { createRequire } from 'node:module';

const ALPHABETS = ['latin', 'latin-ext', 'cyrillic', 'greek'] as const;

interface CardFace {
  /** As the drawing knows it. */
  readonly family: string;
  readonly path: string;
}

/** The faces of titles, and of the lines above and below; the last of each has what the others lack. */
export async function cardFaces(): Promise<Readonly<Record<'read' | 'work', readonly CardFace[]>>> {
  // Looked for beside a file whose place is known only when it runs: the bundler of the site cannot follow that, and shall not.
  const { default: fonts } = await import('pdfmake/fonts/Roboto.js');
  const beside = createRequire(String(fonts['Roboto']?.normal));
  const alphabets = (name: string, of: string, wanted: readonly string[]): readonly CardFace[] =>
    wanted.map((alphabet) => ({
      family: `${name} ${alphabet}`,
      path: beside.resolve(`@fontsource-variable/${of}/files/${of}-${alphabet}-wght-normal.woff2`),
    }));
  const wide = { family: 'Signs', path: beside.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf') };
  return {
    read: [...alphabets('Read', 'literata', ALPHABETS), wide],
    work: [...alphabets('Work', 'hanken-grotesk', ALPHABETS.slice(0, 2)), wide],
  };
}

/** Joiners, directions, variants, colours of skin: they only steer how others look. */
const STEERING = /\p{Cf}|\p{Variation_Selector}|\p{Emoji_Modifier}/gu;
const SAYS_SOMETHING = /[\p{L}\p{N}]/u;

export interface CardSigns {
  /** A line without the signs that no face has; empty where no letter or digit is left of it. */
  readonly shown: (line: string) => string;
  /** Signs that no face has, each once, in order. */
  readonly lostIn: (text: string) => readonly string[];
}

let read: Promise<CardSigns> | null = null;
/** Read from the faces once. */
export function cardSigns(): Promise<CardSigns> {
  read ??= readSigns();
  return read;
}

async function readSigns(): Promise<CardSigns> {
  const { openSync } = await import('fontkit');
  const known = new Set<number>();
  const { read: reading, work } = await cardFaces();
  for (const { path } of [...reading, ...work]) {
    const font = openSync(path);
    if ('characterSet' in font) for (const code of font.characterSet) known.add(code);
  }
  const isKnown = (sign: string): boolean => /\s/.test(sign) || known.has(sign.codePointAt(0) ?? 0);
  const bare = (text: string): string => text.normalize('NFC').replace(STEERING, '');
  return {
    shown(line) {
      const kept = [...bare(line)].filter(isKnown).join('').replace(/\s+/g, ' ').trim();
      return SAYS_SOMETHING.test(kept) ? kept : '';
    },
    lostIn: (text) => [...new Set([...bare(text)].filter((sign) => !isKnown(sign)))],
  };
}
