/**
 * The player of a lesson for pages of other sites: plain HTML without any
 * script. The browser's own controls play; chapters are links that load the
 * player at their moment.
 */
import { escapeUTF8 } from 'entities';
import { chaptersInOrder } from '#lib/chapters/chapter-rules.ts';
import type { EndedLesson } from '#lib/data/ended-lessons.ts';
import { secondsOf } from '#lib/lesson/asked-measure.ts';
import { FOOT_PX } from '#lib/lesson/oembed.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { type Fragment, writeFragment } from '#lib/time/media-fragment.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';

/** Addresses on this site. */
export interface EmbedAddresses {
  /** Of the lesson page. */
  readonly lesson: string;
  readonly recording: string;
  readonly poster: string;
  readonly captions: string;
  readonly chapters: string;
}

/** All of its style: the policy of the answer allows this text and no other. */
export const EMBED_STYLE = `
*{box-sizing:border-box}
body{margin:0;height:100vh;display:grid;grid-template-rows:minmax(0,1fr) ${FOOT_PX}px;background:#f8f4ec;color:#25211b;font:400 16px/1.4 system-ui,"Segoe UI",sans-serif}
video{display:block;width:100%;height:100%;background:#25211b}
audio{width:100%;align-self:center}
main{min-height:0;position:relative;display:grid}
main>p{padding:1rem;margin:0;overflow:auto}
footer{display:flex;align-items:center;gap:1rem;padding:0 .75rem;border-top:2px solid #96461b;min-width:0}
footer p{margin:0;flex:1;min-width:0;white-space:nowrap;overflow:hidden;text-overflow:ellipsis}
a{color:#96461b}
strong a{font-family:Georgia,"Times New Roman",serif}
summary{cursor:pointer;min-height:44px;display:flex;align-items:center;white-space:nowrap;color:#6f3110;text-decoration:underline}
details ol{position:absolute;inset-inline:0;bottom:${FOOT_PX}px;max-height:calc(100vh - ${FOOT_PX}px);overflow:auto;margin:0;padding:.5rem .75rem;list-style:none;background:#fffdf8;border-top:1px solid #ddd3c2}
li a{display:flex;gap:.75rem;min-height:44px;align-items:center}
time{font-variant-numeric:tabular-nums;min-width:3.5rem}
:focus-visible{outline:3px solid #1b4fa8;outline-offset:2px}
`;

/** @param playAt what the player plays; null for all of the recording */
export function embedPage(revision: Revision, at: EmbedAddresses, playAt: Fragment | null): string {
  const { content, workshop } = revision;
  const title = escapeUTF8(content.title);
  const lesson = escapeUTF8(at.lesson);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<title>${title}</title>
<link rel="canonical" href="${lesson}">
<link rel="icon" href="data:,">
<style>${EMBED_STYLE}</style>
</head>
<body>
<main lang="${escapeUTF8(content.language)}">${player(revision, at, playAt)}</main>
<footer>
<p><strong lang="${escapeUTF8(content.language)}"><a href="${lesson}" target="_blank" rel="noopener">${title}</a></strong>, ${escapeUTF8(workshop.name)}</p>
${corrections(revision, lesson)}${chapters(revision)}</footer>
</body>
</html>
`;
}

/** What a frame of another site shows of a lesson that was deleted. */
export const endedEmbed = ({ title, workshop }: EndedLesson): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<title>${escapeUTF8(title)}: this lesson has ended</title>
<link rel="icon" href="data:,">
<style>${EMBED_STYLE}</style>
</head>
<body>
<main><p><strong>This lesson has ended.</strong> ${escapeUTF8(workshop.name)} took “${escapeUTF8(title)}” away.</p></main>
</body>
</html>
`;

function player({ recording, cues, content }: Revision, at: EmbedAddresses, playAt: Fragment | null): string {
  if (!recording) return `<p>${escapeUTF8(content.summary.trim() || content.title)}</p>`;
  const language = escapeUTF8(content.language);
  const tracks = [
    ...(cues.length > 0
      ? [
          `<track kind="captions" src="${escapeUTF8(at.captions)}" srclang="${language}" label="Captions" default>`,
        ]
      : []),
    ...(content.chapters.length > 0
      ? [`<track kind="chapters" src="${escapeUTF8(at.chapters)}" srclang="${language}" label="Chapters">`]
      : []),
  ].join('');
  const source = `${at.recording}${playAt === null ? '' : `#${writeFragment(playAt)}`}`;
  const common = `src="${escapeUTF8(source)}" controls preload="metadata" aria-label="${escapeUTF8(content.title)}"`;
  if (!recording.hasVideo) return `<audio ${common}>${tracks}</audio>`;
  const poster = recording.posterKey !== null && playAt === null ? ` poster="${escapeUTF8(at.poster)}"` : '';
  return `<video ${common} playsinline${poster}>${tracks}</video>`;
}

const chapters = ({ recording, content }: Revision): string =>
  !recording || content.chapters.length === 0
    ? ''
    : `<details><summary>Chapters</summary><ol lang="${escapeUTF8(content.language)}">${chaptersInOrder(
        content.chapters,
      )
        .map(
          ({ startMs, title }) =>
            `<li><a href="?t=${secondsOf(startMs)}"><time>${formatTimeCode(startMs)}</time>${escapeUTF8(title)}</a></li>`,
        )
        .join('')}</ol></details>`;

const corrections = ({ content }: Revision, lesson: string): string =>
  content.corrections.length === 0
    ? ''
    : `<a href="${lesson}#corrections" target="_blank" rel="noopener">${
        content.corrections.length === 1 ? '1 correction' : `${content.corrections.length} corrections`
      }</a>\n`;
