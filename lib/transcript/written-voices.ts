/** Who speaks, written into the text: marking is lost in plain words, a speaker's name must not be. */
import { type Loss, lossOf } from './loss.ts';

export interface Spoken {
  readonly line: number;
  readonly text: string;
  /** Who speaks first in it, or empty. */
  readonly voice: string;
}

/**
 * Where several voices speak, a text begins with the speaker's name and a
 * colon whenever the voice changes; where one speaks throughout, the name
 * would be noise and is left out. Either is listed.
 */
export function writeVoices(said: readonly Spoken[]): {
  readonly texts: readonly string[];
  readonly losses: readonly Loss[];
} {
  const several = new Set(said.map((one) => one.voice).filter(Boolean)).size > 1;
  let speaker = '';
  const texts = said.map(({ text, voice }) => {
    const changes = several && voice !== '' && voice !== speaker;
    speaker = voice || speaker;
    return changes ? `${voice}: ${text}` : text;
  });
  const losses = said
    .filter(({ voice }) => voice !== '')
    .map(({ line, voice }) => lossOf(several ? 'voice-written-out' : 'voice', line, voice));
  return { texts, losses };
}
