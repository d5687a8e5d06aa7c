/**
 * Reads WebVTT as browsers do: the parser algorithm of W3C WebVTT, section
 * 6.1, with the line of each thing. It takes what browsers take, drops what
 * they drop, never throws, and lists every line that came to nothing. Cue text
 * stays as written; lib/transcript/cue-text.ts reads it.
 */
import { type CueSettings, DEFAULT_SETTINGS, readCueSettings } from './cue-settings.ts';
import { type Loss, lossOf } from './loss.ts';
import { readRegion, type WebVttRegion } from './webvtt-region.ts';
import { readTimings } from './webvtt-time.ts';

/** A cue as it stands in the file; its end may lie before its start. */
export interface WebVttCue {
  /** Line of its times, from 1. */
  readonly line: number;
  readonly id: string;
  readonly startMs: number;
  readonly endMs: number;
  /** Cue text as written: tags and character references are not read yet. */
  readonly text: string;
  /** Settings as written. */
  readonly written: string;
  readonly settings: CueSettings;
}

export interface WebVttFile {
  /** Whether the file begins as a WebVTT file must; if not, nothing was read. */
  readonly signed: boolean;
  readonly cues: readonly WebVttCue[];
  readonly regions: readonly WebVttRegion[];
  /** Style sheets as written, with the line of each. */
  readonly styles: readonly { readonly line: number; readonly text: string }[];
  readonly losses: readonly Loss[];
}

/** Text with its lines parted by `\n` alone and no NUL: what every reader here begins with. */
export const normaliseLines = (text: string): string => {
  const plain = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const lined = plain.includes('\r') ? plain.replace(/\r\n?/g, '\n') : plain;
  return lined.includes('\0') ? lined.replaceAll('\0', '\uFFFD') : lined;
};

/** Whether a text begins as a WebVTT file must. */
export const isWebVtt = (text: string): boolean => /^\uFEFF?WEBVTT(?:[ \t\r\n]|$)/.test(text);

/** Reads a WebVTT file from decoded text. Linear in its length. */
export function readWebVtt(text: string): WebVttFile {
  const file = new Reading(normaliseLines(text));
  if (isWebVtt(text)) file.read();
  return {
    signed: isWebVtt(text),
    cues: file.cues,
    regions: file.regions,
    styles: file.styles,
    losses: file.losses,
  };
}

/** One block while it is read. */
interface Block {
  readonly firstLine: number;
  kind: 'plain' | 'style' | 'region';
  /** What was read of it: an id, then, once there are times, the cue's text. */
  buffer: string;
  timed: { readonly line: number; readonly id: string; readonly written: string } | null;
  /** Null where the times could not be read. */
  timings: ReturnType<typeof readTimings>;
}

/** One pass over a file; a class because the algorithm is a cursor that blocks move. */
class Reading {
  readonly cues: WebVttCue[] = [];
  readonly regions: WebVttRegion[] = [];
  readonly styles: { line: number; text: string }[] = [];
  readonly losses: Loss[] = [];
  private readonly input: string;
  private position = 0;
  /** Line that begins at `position`, from 1. */
  private line = 1;

  constructor(input: string) {
    this.input = input;
  }

  read(): void {
    const signature = this.takeLine();
    const behind = signature.slice('WEBVTT'.length).trim();
    if (behind !== '') this.losses.push(lossOf('header-text', 1, behind));
    if (this.atEnd()) return;
    // Lines right below the signature are header; they can hold no cue unless a line of times ends them.
    if (this.input[this.position] !== '\n') this.takeBlock(true);
    this.skipEmptyLines();
    while (!this.atEnd()) {
      this.takeBlock(false);
      this.skipEmptyLines();
    }
  }

  private takeBlock(inHeader: boolean): void {
    const block: Block = { firstLine: this.line, kind: 'plain', buffer: '', timed: null, timings: null };
    for (let count = 1; ; count += 1) {
      const before = this.position;
      const line = this.takeLine();
      if (line === '') break;
      if (!line.includes('-->')) {
        addLine(block, line, !inHeader && count === 2);
      } else if (inHeader || block.timed !== null || count > 2) {
        // The next block begins with this line.
        this.position = before;
        this.line -= 1;
        break;
      } else {
        setTimes(block, line, this.line - 1);
      }
      if (this.atEnd()) break;
    }
    if (block.timed) this.keepTimed(block, block.timed);
    else if (block.buffer !== '') this.keepUntimed(block, inHeader);
  }

  private keepTimed({ buffer, timings }: Block, { line, id, written }: NonNullable<Block['timed']>): void {
    if (!timings) {
      this.losses.push(lossOf('time-unreadable', line, `${written}\n${buffer}`.trim()));
      return;
    }
    const { startMs, endMs, rest } = timings;
    const settings = rest === '' ? DEFAULT_SETTINGS : this.settingsOf(rest, line);
    this.cues.push({ line, id, startMs, endMs, text: buffer, written: rest, settings });
  }

  private settingsOf(written: string, line: number): CueSettings {
    const read = readCueSettings(written);
    for (const setting of read.passedOver) this.losses.push(lossOf('setting', line, setting));
    const { region } = read.settings;
    // A region must be described above its cues; one that is not there is none.
    return this.regions.some((known) => known.id === region)
      ? read.settings
      : { ...read.settings, region: '' };
  }

  private keepUntimed({ firstLine: line, kind, buffer }: Block, inHeader: boolean): void {
    if (inHeader) {
      this.losses.push(lossOf('header-text', line, buffer));
    } else if (kind === 'style') {
      this.styles.push({ line, text: buffer });
    } else if (kind === 'region') {
      this.regions.push(readRegion(buffer, line));
    } else if (/^NOTE(?:[ \t\n]|$)/.test(buffer)) {
      this.losses.push(lossOf('note', line, buffer.slice('NOTE'.length).trim()));
    } else {
      this.losses.push(lossOf('text-without-time', line, buffer));
    }
  }

  private takeLine(): string {
    const end = this.input.indexOf('\n', this.position);
    const line = this.input.slice(this.position, end < 0 ? undefined : end);
    this.position = end < 0 ? this.input.length : end + 1;
    this.line += 1;
    return line;
  }

  private skipEmptyLines(): void {
    while (this.input[this.position] === '\n') {
      this.position += 1;
      this.line += 1;
    }
  }

  private atEnd(): boolean {
    return this.position >= this.input.length;
  }
}

function setTimes(block: Block, written: string, line: number): void {
  block.timed = { line, id: block.buffer, written };
  block.timings = readTimings(written);
  block.buffer = '';
}

/** Adds a line; at the second one, the first tells what kind of block it is. */
function addLine(block: Block, line: string, second: boolean): void {
  if (second && block.timed === null) {
    if (/^STYLE[ \t\f]*$/.test(block.buffer)) block.kind = 'style';
    if (/^REGION[ \t\f]*$/.test(block.buffer)) block.kind = 'region';
    if (block.kind !== 'plain') block.buffer = '';
  }
  block.buffer = block.buffer === '' ? line : `${block.buffer}\n${line}`;
}
