/** The keys of the screen. Each needs Alt (Option), so that none is pressed by writing (WCAG 2.2, 2.1.4). */

export type KeyAct =
  | 'play'
  | 'back'
  | 'forward'
  | 'slower'
  | 'faster'
  | 'chapter'
  | 'next-cue'
  | 'former-cue'
  | 'join'
  | 'begin-here'
  | 'end-here';

export interface KeyRow {
  readonly act: KeyAct;
  /** As `KeyboardEvent.key` has it, small. */
  readonly key: string;
  /** As `KeyboardEvent.code` has it, for keyboards on which Option makes other signs. */
  readonly code: string;
  readonly shown: string;
  readonly does: string;
  readonly edits: boolean;
}

export const KEYS: readonly KeyRow[] = [
  { act: 'play', key: 'p', code: 'KeyP', shown: 'P', does: 'Play or pause', edits: false },
  { act: 'back', key: ',', code: 'Comma', shown: ',', does: 'Back 3 seconds', edits: false },
  { act: 'forward', key: '.', code: 'Period', shown: '.', does: 'Forward 3 seconds', edits: false },
  { act: 'slower', key: '-', code: 'Minus', shown: '-', does: 'Slower', edits: false },
  { act: 'faster', key: '+', code: 'Equal', shown: '+', does: 'Faster', edits: false },
  { act: 'former-cue', key: 'arrowup', code: 'ArrowUp', shown: '↑', does: 'Former cue', edits: false },
  { act: 'next-cue', key: 'arrowdown', code: 'ArrowDown', shown: '↓', does: 'Next cue', edits: false },
  { act: 'chapter', key: 'c', code: 'KeyC', shown: 'C', does: 'Set a chapter where it plays', edits: true },
  { act: 'join', key: 'j', code: 'KeyJ', shown: 'J', does: 'Join the cue with the next one', edits: true },
  {
    act: 'begin-here',
    key: 'b',
    code: 'KeyB',
    shown: 'B',
    does: 'The cue begins where it plays',
    edits: true,
  },
  { act: 'end-here', key: 'n', code: 'KeyN', shown: 'N', does: 'The cue ends where it plays', edits: true },
];

/** What a key press asks for, or null. */
export function actOf(
  event: Pick<KeyboardEvent, 'altKey' | 'ctrlKey' | 'metaKey' | 'key' | 'code'>,
): KeyRow | null {
  if (!event.altKey || event.ctrlKey || event.metaKey) return null;
  const key = event.key.toLowerCase();
  const plain = /^[\x20-\x7e]$|^arrow/.test(key);
  return (
    KEYS.find((row) => row.key === key || (row.act === 'faster' && key === '=')) ??
    (plain ? null : (KEYS.find((row) => row.code === event.code) ?? null))
  );
}
