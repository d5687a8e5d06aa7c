/**
 * Which face of ours can print a sign, sign by sign: the plain one, else one
 * with wide coverage; a readable mark where neither can. What is written from
 * right to left, or joined by rules that the sheet does not set (Arabic,
 * Hebrew, Syriac, Thaana, N’Ko), counts as not printable even where the face
 * has its letters: in the wrong order they would be words of nobody.
 */
import { createRequire } from 'node:module';
import { invariant } from '#lib/result.ts';

export type Face = 'Roboto' | 'DejaVu Sans';

/** Stands for a run of signs that no face has. */
export const LOST = '[?]';

type Styles = Readonly<Record<'normal' | 'bold', string>>;

/** The files of the faces. */
export async function faces(): Promise<Readonly<Record<Face, Styles>>> {
  const { default: fonts } = await import('pdfmake/fonts/Roboto.js');
  const { normal, bold } = fonts['Roboto'] ?? {};
  invariant(typeof normal === 'string' && typeof bold === 'string', 'pdfmake brings its own face');
  // Looked for beside the package that is there: the bundler would try to take a font in that it sees named.
  const beside = createRequire(normal);
  const wide = (style: string): string => beside.resolve(`dejavu-fonts-ttf/ttf/DejaVuSans${style}.ttf`);
  return { Roboto: { normal, bold }, 'DejaVu Sans': { normal: wide(''), bold: wide('-Bold') } };
}

export interface Run {
  readonly text: string;
  readonly face: Face;
}

export interface Signs {
  /** A text in runs that one face prints; the mark in place of what none can. Joined they are the text as it is printed. */
  readonly runsOf: (text: string) => readonly Run[];
  /** Signs of a text that no face prints, each once, in order. */
  readonly lostIn: (text: string) => readonly string[];
}

const UNSET = /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;
/** Signs that only steer how others look: joiners, directions, soft hyphens, variants. They print nothing. */
const STEERING = /\p{Cf}|\p{Variation_Selector}/gu;
const PLAIN = /^[\n\x20-\x7e]*$/;

async function readSigns(): Promise<Signs> {
  const [{ openSync }, { Roboto, 'DejaVu Sans': dejaVu }] = await Promise.all([import('fontkit'), faces()]);
  const charactersOf = (path: string): ReadonlySet<number> => {
    const font = openSync(path);
    return new Set('characterSet' in font ? font.characterSet : []);
  };
  // What a heading cannot print in bold is better set in the other face throughout.
  const both = ({ normal, bold }: Styles): ReadonlySet<number> => {
    const inBold = charactersOf(bold);
    return new Set([...charactersOf(normal)].filter((code) => inBold.has(code)));
  };
  const plain = both(Roboto);
  const wide = both(dejaVu);
  const faceOf = (sign: string): Face | null => {
    const code = sign.codePointAt(0) ?? 0;
    if (sign === '\n' || plain.has(code)) return 'Roboto';
    return wide.has(code) && !UNSET.test(sign) ? 'DejaVu Sans' : null;
  };
  const printed = (text: string): string => text.normalize('NFC').replaceAll('\t', ' ').replace(STEERING, '');
  return {
    runsOf(text) {
      if (PLAIN.test(text)) return [{ text, face: 'Roboto' }];
      const runs: { text: string; face: Face; lost: boolean }[] = [];
      for (const sign of printed(text)) {
        const face = faceOf(sign);
        const last = runs.at(-1);
        if (face === null) {
          if (!last?.lost) runs.push({ text: LOST, face: 'Roboto', lost: true });
        } else if (last && !last.lost && last.face === face) last.text += sign;
        else runs.push({ text: sign, face, lost: false });
      }
      return runs.map(({ text: said, face }) => ({ text: said, face }));
    },
    lostIn: (text) =>
      PLAIN.test(text) ? [] : [...new Set([...printed(text)].filter((sign) => faceOf(sign) === null))],
  };
}

let read: Promise<Signs> | null = null;
/** Read from the faces once, when the first sheet is set. */
export function signs(): Promise<Signs> {
  read ??= readSigns();
  return read;
}
