/**
 * `index.html` of a portable copy: the lesson as its page shows it, in one
 * file that needs nothing but the files beside it, from disk as from anywhere.
 */
import { createHash } from 'node:crypto';
import { closed } from '#app/words/correction-words.ts';
import { textFileWords } from '#app/words/text-file-words.ts';
import { chapterSpans } from '#lib/chapters/chapter-rules.ts';
import { formatMeasure, secondsOf, sizeWords } from '#lib/lesson/asked-measure.ts';
import { cautionWords } from '#lib/lesson/cautions.ts';
import type { Content } from '#lib/lesson/content.ts';
import { correctionsDuring, correctionsNewestFirst } from '#lib/lesson/corrections.ts';
import { timeNeeded, weaveWord } from '#lib/lesson/making-words.ts';
import { PAGE_PARTS, PART_TITLES, type PageStep, pageSteps } from '#lib/lesson/page-steps.ts';
import { placementFacts } from '#lib/lesson/placement-words.ts';
import { planWords, unitBegun } from '#lib/lesson/repeat-words.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { needed } from './kit-part.ts';
import { each, html, joined, Markup, when } from './markup.ts';
import { PAGE_SCRIPT } from './page-script.ts';
import { PAGE_STYLE } from './page-style.ts';
import { type Teller, tellerOf, words } from './told-text.ts';

export interface CopiedLesson {
  /** Files named as in the copy. */
  readonly revision: Revision;
  readonly isDraft: boolean;
  /** Numbers of all revisions in the copy, newest first. */
  readonly numbers: readonly number[];
  /** Drawn pictures of placements that lie in the copy: their text alternatives by id. */
  readonly drawn: ReadonlyMap<string, string>;
  /** Kits that lie in the copy, by the size's place. */
  readonly kits: ReadonlySet<number>;
}

const day = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' });

/** Only its own style and script may run, whatever somebody typed. */
const policy = (): string => {
  const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  return `script-src ${hash(PAGE_SCRIPT)}; style-src ${hash(PAGE_STYLE)}; connect-src 'self'; object-src 'none'; frame-src 'none'; base-uri 'none'; form-action 'none'`;
};

/** @param head what stands in the body of the page */
export const standingPage = (language: string, title: string, body: Markup, script = false): string =>
  html`<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy()}">
<meta name="referrer" content="no-referrer">
<link rel="icon" href="data:,">
<title>${title}</title>
<style>${new Markup(PAGE_STYLE)}</style>
</head>
<body>
${body}
${when(script, () => html`<script>${new Markup(PAGE_SCRIPT)}</script>`)}
</body>
</html>
`.text;

export function lessonFile(copied: CopiedLesson): string {
  const { revision } = copied;
  const { content } = revision;
  const teller = tellerOf(revision.terms);
  const body = html`<main>
<header>
<p class="by">${revision.workshop.name}</p>
<h1>${content.title}</h1>
${when(copied.isDraft, () => html`<p class="notice" lang="en">A draft: nothing of this lesson was published when it was copied.</p>`)}
<div class="summary">${each(teller.explained(paragraphs(content.summary)), (text) => html`<p>${text}</p>`)}</div>
${facts(content, teller)}
</header>
<div class="spread">
${revision.recording ? html`<div class="beside">${player(revision)}</div>` : null}
<div class="text">
${needed(content, copied.kits)}
${cautions(content, teller)}
${steps(copied, teller)}
${words(revision.terms)}
${transcript(revision, teller)}
${corrections(revision)}
${foot(copied)}
</div>
</div>
</main>`;
  return standingPage(content.language, content.title, body, revision.recording !== null);
}

const paragraphs = (text: string): readonly string[] =>
  text.split(/\n{2,}/).filter((part) => part.trim() !== '');

const OTHER_HAND = { left: 'right', right: 'left' } as const;

function facts(content: Content, { explained }: Teller): Markup {
  const told: readonly (readonly [string, Markup])[] = [
    [weaveWord(content), ...explained([joined([content.weave, content.otherNames], ', also ')])] as const,
    ['Difficulty', html`${content.difficulty}`],
    ['Time', html`${joined(timeNeeded(content))}`],
    ['Leaning', content.leaning === 'none' ? html`` : leaning(content.leaning)],
    ['Sizes', html`${content.sizes.map(sizeWords).join(', ')}`],
  ].map(([name, text]) => [name as string, text as Markup]);
  return html`<dl class="facts" lang="en">${each(
    told.filter(([, { text }]) => text !== ''),
    ([name, text]) => html`<div><dt>${name}</dt><dd>${text}</dd></div>`,
  )}</dl>`;
}

const leaning = (side: 'left' | 'right'): Markup =>
  html`<span data-hand="shown">${side}, as the recording shows it</span><span data-hand="mirrored">${OTHER_HAND[side]}, in the mirrored picture; ${side} in the recording</span>`;

/** A link to a moment: of the player where there is script, else of the recording's own file. */
const moment = (file: string, atMs: number, label = ''): Markup =>
  html`<a class="time" href="${`${file}#t=${secondsOf(atMs)}`}" data-at="${atMs}">${joined([label, formatTimeCode(atMs)], ' ')}</a>`;

const holdButton = html`<button type="button" id="hold" aria-pressed="false">Hold at each step</button>`;

function player({ content, recording }: Revision): Markup | null {
  if (!recording) return null;
  const { mediaKey, posterKey, hasVideo, width, height, durationMs } = recording;
  const chapters = chapterSpans(content.chapters, durationMs);
  return html`<section class="player" aria-label="Recording">
${
  hasVideo
    ? html`<div class="frame"><video id="recording" controls preload="metadata" playsinline src="${mediaKey}"${posterKey === null ? null : html` poster="${posterKey}"`}${width === null || height === null ? null : html` width="${width}" height="${height}"`}></video></div>
<div class="wishes" lang="en" hidden><button type="button" id="mirror" aria-pressed="false">Mirror the picture</button>${holdButton}</div>
<div id="own" lang="en" hidden><p id="line"></p><button type="button" id="go">Play</button><input type="range" id="place" min="0" step="0.1" value="0" aria-label="Place in the recording"><span id="clock"></span></div>
<p id="held" role="status"></p>`
    : html`<audio id="recording" controls preload="metadata" src="${mediaKey}"></audio>
<div class="wishes" lang="en" hidden>${holdButton}</div><p id="held" role="status"></p>`
}
${when(
  chapters.length > 0,
  () =>
    html`<h2 lang="en">Chapters</h2><ol class="chapters">${each(
      chapters,
      ({ startMs, title }) =>
        html`<li><a href="${`${mediaKey}#t=${secondsOf(startMs)}`}" data-at="${startMs}"><span>${formatTimeCode(startMs)}</span> ${title}</a></li>`,
    )}</ol>`,
)}
</section>`;
}

/** A drawn picture's file in the copy; ids may hold anything, so that steps are counted. */
export const drawnName = (
  step: Pick<PageStep, 'part' | 'number'>,
  hand: 'shown' | 'mirrored' = 'shown',
): string => `pictures/${step.part}-${step.number}${hand === 'mirrored' ? '-mirrored' : ''}.svg`;

function cautions(content: Content, { explained }: Teller): Markup {
  const all = content.cautions.map((caution) => cautionWords(caution));
  const texts = explained(all.map(({ text }) => text));
  return when(
    all.length > 0,
    () =>
      html`<section aria-labelledby="care"><h2 id="care" lang="en">Take care</h2><div class="notice">${each(
        all,
        ({ title }, index) =>
          html`<p>${title === '' ? null : html`<strong>${title}.</strong> `}${texts[index] ?? null}</p>`,
      )}</div></section>`,
  );
}

function steps({ revision, drawn }: CopiedLesson, { explained }: Teller): Markup {
  const { content, recording } = revision;
  const all = pageSteps(content);
  return each(PAGE_PARTS, (part) => {
    const own = all.filter((step) => step.part === part);
    return when(
      own.length > 0,
      () =>
        html`<section aria-labelledby="${part}"><h2 id="${part}" lang="en">${PART_TITLES[part]}</h2>${when(part === 'repeat', () => repeatNote(revision))}<ol class="steps">${each(
          own,
          (step) => {
            const still = revision.stills.find(({ of }) => of === step.id);
            const picture = drawn.get(step.id);
            const begun = unitBegun(content, step.placement);
            const told = step.placement ? placementFacts(content, step.placement).join('; ') : '';
            return html`<li${still || picture !== undefined ? html` class="pictured"` : null} id="${`${part}-${step.number}`}">${when(
              still !== undefined || picture !== undefined,
              () =>
                html`<div>${still ? html`<img src="${still.key}" alt="${still.text}" loading="lazy">` : null}${picture === undefined ? null : drawing(step, picture)}</div>`,
            )}<div>${when(begun !== '', () => html`<p lang="en"><strong>${begun}</strong></p>`)}<p class="sentence">${explained([step.sentence])}</p>${when(told !== '', () => html`<p class="soft" lang="en">${told.charAt(0).toUpperCase() + told.slice(1)}.</p>`)}${
              recording && step.atMs !== null
                ? html`<p lang="en">${moment(recording.mediaKey, step.atMs, 'Said here:')}</p>`
                : null
            }</div></li>`;
          },
        )}</ol></section>`,
    );
  });
}

/** For both hands: numbers in it stay readable, so that it cannot be turned round on the page. */
const drawing = (step: PageStep, text: string): Markup =>
  html`<img src="${drawnName(step)}" alt="${text}" data-hand="shown" lang="en" loading="lazy"><img src="${drawnName(step, 'mirrored')}" alt="${`${text} Mirrored.`}" data-hand="mirrored" lang="en" loading="lazy">`;

function repeatNote({ content, kits }: Revision): Markup {
  const sizes = kits.flatMap(({ size, repeats }) => {
    const found = content.sizes.find(({ id }) => id === size);
    return found && repeats > 0
      ? [{ name: found.name.trim() || formatMeasure(found.bodyMm, 'mm'), repeats }]
      : [];
  });
  const times = sizes.map(({ name, repeats }) => `${repeats} times for ${name}`);
  const plans = sizes.map(({ name, repeats }) => `For ${name}: ${planWords(content, repeats)}`);
  return html`<p lang="en">${times.length === 0 ? 'Repeat these steps.' : content.runs.length === 0 ? `Work these steps ${times.join(', ')}.` : plans.join(' ')}</p>`;
}

function transcript({ content, cues, recording }: Revision, { said: asSaid }: Teller): Markup {
  const told = new Set<string>();
  const chapters = chapterSpans(content.chapters, null);
  const firstMs = chapters[0]?.startMs ?? Number.POSITIVE_INFINITY;
  const parts = [
    { startMs: null, title: 'Before the first chapter', said: cues.filter((cue) => cue.startMs < firstMs) },
    ...chapters.map(({ startMs, title }, index) => {
      const endMs = chapters[index + 1]?.startMs ?? Number.POSITIVE_INFINITY;
      return { startMs, title, said: cues.filter((cue) => cue.startMs >= startMs && cue.startMs < endMs) };
    }),
  ].filter(({ said }) => said.length > 0);
  return when(
    parts.length > 0,
    () =>
      html`<section aria-labelledby="transcript"><h2 id="transcript" lang="en">Transcript</h2>${each(
        parts,
        ({ startMs, title, said }) => {
          const texts = asSaid(said.map(({ text }) => text));
          return html`<details open><summary>${startMs === null ? title : `${formatTimeCode(startMs)} ${title}`}</summary>${each(
            said,
            (cue, index) => {
              const here = correctionsDuring(content.corrections, cue).filter(({ id }) => !told.has(id));
              for (const { id } of here) told.add(id);
              return html`<div class="cue" data-from="${cue.startMs}" data-to="${cue.endMs}">${
                recording
                  ? moment(recording.mediaKey, cue.startMs)
                  : html`<span>${formatTimeCode(cue.startMs)}</span>`
              }<p>${texts[index] ?? null}</p>${each(
                here,
                ({ wrong, right }) =>
                  html`<div class="notice"><strong lang="en">Corrected:</strong> <s>${wrong}</s> ${right}</div>`,
              )}</div>`;
            },
          )}</details>`;
        },
      )}</section>`,
  );
}

const corrections = ({ content, recording }: Revision): Markup =>
  when(
    content.corrections.length > 0,
    () =>
      html`<section aria-labelledby="corrections"><h2 id="corrections" lang="en">Corrections</h2><ol>${each(
        correctionsNewestFirst(content.corrections),
        (one) =>
          html`<li><p lang="en"><span class="label">${one.kind}</span>${one.revision === null ? ' not published yet' : ` since revision ${one.revision}`}${
            one.startMs === null
              ? null
              : html`, at ${recording ? moment(recording.mediaKey, one.startMs) : formatTimeCode(one.startMs)}`
          }</p><p><span lang="en">Wrong:</span> <s>${one.wrong}</s></p><p><span lang="en">Right:</span> <strong>${one.right}</strong></p><p><span lang="en">Concerns:</span> ${closed(one.affects)} <span lang="en">${one.kitsChange ? 'Kits change.' : 'Kits stay as they are.'}</span></p></li>`,
      )}</ol></section>`,
  );

function foot({ revision, isDraft, numbers }: CopiedLesson): Markup {
  const { content } = revision;
  const files = textFileWords(revision).filter(
    ({ name }) => (name.startsWith('chapters') ? content.chapters : revision.cues).length > 0,
  );
  return html`<footer>
${when(
  content.links.length > 0,
  () =>
    html`<h2 lang="en">Links</h2><ul>${each(
      content.links,
      ({ label, address }) =>
        html`<li><a href="${address}" rel="noopener noreferrer">${label.trim() === '' ? address : label}</a></li>`,
    )}</ul>`,
)}
<div lang="en"><h2>About this lesson</h2>
<p>${isDraft ? 'A draft' : `Revision ${revision.number}, published ${day.format(new Date(revision.publishedAt))}`} by ${revision.workshop.name}. ${content.licence}</p>
<div class="files"><h3>Files in this folder</h3><ul>
${each(files, ({ name, title }) => html`<li><a href="${name}">${title}</a></li>`)}
<li><a href="sheet.pdf">Sheet for the bench, PDF</a></li>
<li><a href="lesson.json">Everything as data, JSON</a>, described by <a href="lesson.schema.json">its schema</a></li>
${each(numbers, (number) => html`<li><a href="${`revisions/${number}.json`}">${`Revision ${number} as data, JSON`}</a></li>`)}
</ul></div></div>
</footer>`;
}
