/**
 * Writes TTML in the IMSC 1.1 text profile (W3C TTML Profiles for Internet
 * Media Subtitles and Captions 1.1): one paragraph a cue, at the bottom of the
 * picture, times on the media's own clock. The same cues give the same bytes.
 */
import { type Cue, compareCues } from './cue.ts';
import { tidyCueText } from './tidy-text.ts';
import { formatWebVttTime } from './webvtt-time.ts';

/** @param language BCP 47 tag of what is spoken. A cue without text is left out; WebVTT settings have no place here. */
export function writeTtml(cues: readonly Cue[], language: string): string {
  const paragraphs = cues
    .toSorted(compareCues)
    .map((cue) => ({ ...cue, text: tidyCueText(cue.text) }))
    .filter((cue) => cue.text !== '')
    .map(
      ({ startMs, endMs, text }, index) =>
        `      <p xml:id="c${index + 1}" begin="${formatWebVttTime(startMs)}" end="${formatWebVttTime(endMs)}">${xmlText(text)}</p>\n`,
    );
  return `${headOf(language)}${paragraphs.join('')}    </div>
  </body>
</tt>
`;
}

const headOf = (language: string): string => `<?xml version="1.0" encoding="UTF-8"?>
<tt xmlns="http://www.w3.org/ns/ttml" xmlns:ttp="http://www.w3.org/ns/ttml#parameter" xmlns:tts="http://www.w3.org/ns/ttml#styling" ttp:timeBase="media" ttp:contentProfiles="http://www.w3.org/ns/ttml/profile/imsc1.1/text" xml:lang="${xmlText(language)}">
  <head>
    <layout>
      <region xml:id="bottom" tts:origin="10% 75%" tts:extent="80% 20%" tts:displayAlign="after" tts:textAlign="center"/>
    </layout>
  </head>
  <body region="bottom">
    <div>
`;

/** Text as XML holds it; what XML cannot hold becomes U+FFFD. */
const xmlText = (text: string): string =>
  text
    .replace(/[^\t\n\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '\uFFFD')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll('\n', '<br/>');
