/**
 * A published lesson whose recording is edited anew: 12 chapters, 300 cues, a
 * correction, steps with pictures. The start is trimmed, a minute is cut and a
 * sentence said again. All of it is invented, the sound too.
 */
import { randomUUID } from 'node:crypto';
import { mkdir, mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import type { Bench } from '#lib/bench/bench.ts';
import { decideRecording } from '#lib/bench/decide-recording.ts';
import { queueComparisons } from '#lib/bench/queue-comparisons.ts';
import { saveDraft } from '#lib/bench/save-draft.ts';
import { takeBackRecording } from '#lib/bench/take-back-recording.ts';
import { comparisonsToDo, openComparison } from '#lib/data/comparisons.ts';
import { findDraft } from '#lib/data/lessons.ts';
import { addUpload, moveRecording } from '#lib/data/uploads.ts';
import { compareRecordings } from '#lib/recording/compare-recordings.ts';
import { ingestRecording } from '#lib/recording/ingest-recording.ts';
import { type RecordingWork, uploadsFolder } from '#lib/recording/recording-work.ts';
import { carryOver } from '#lib/retiming/carry-over.ts';
import { editPointsOf } from '#lib/retiming/edit-points.ts';
import { retakesIn } from '#lib/retiming/retakes.ts';
import { openLocalDisk } from '#lib/storage/local-disk.ts';
import { MADE_RATE, speak, VOICES } from '#tests/retiming/made-sound.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aLesson, type LessonRows } from '#tests/support/a-lesson.ts';
import { testFfmpeg } from '#tests/support/clips.ts';
import { testDatabase } from '#tests/support/database.ts';
import { spliced, writeSoundFile } from '#tests/support/sound-files.ts';

const SECONDS = 180;
const { db } = await testDatabase();
const bench: Bench = { db, now: () => new Date('2026-05-01T08:00:00Z'), newId: randomUUID };
const filesFolder = await mkdtemp(join(tmpdir(), 'benchleaf-re-edited-'));
afterAll(() => rm(filesFolder, { recursive: true }));
const work: RecordingWork = {
  db,
  storage: openLocalDisk(filesFolder),
  ffmpeg: await testFfmpeg(),
  filesFolder,
  newId: randomUUID,
};
const attempt = { signal: new AbortController().signal, number: 1, isLast: false };

const [voice, other] = VOICES;
if (!voice || !other) throw new Error('there are voices');
const old = speak(voice, SECONDS, 71);
const at = (seconds: number): number => seconds * MADE_RATE;
/** 7 s off the start, 60 to 120 s cut, and 144 to 148 s said again in 5 s. */
const edited = spliced(
  old.slice(at(7), at(60)),
  old.slice(at(120), at(144)),
  speak(other, 5, 72),
  old.slice(at(148)),
);

const cues = Array.from({ length: 300 }, (_, k) => ({
  id: `cue-${k}`,
  startMs: k * 600 + 50,
  endMs: k * 600 + 550,
  text: `Words ${k}`,
  settings: '',
}));

const content = aContent({
  chapters: Array.from({ length: 12 }, (_, k) => ({
    id: `ch-${k}`,
    kind: 'setup' as const,
    title: `Chapter ${k + 1}`,
    startMs: k * 15_000,
  })),
});

/** Brings a recording in, the way that a finished upload goes. */
async function bringIn(lessonId: string, sound: Float32Array): Promise<string> {
  const recordingId = randomUUID();
  const folder = uploadsFolder(filesFolder);
  await mkdir(folder, { recursive: true });
  const path = join(folder, recordingId);
  writeSoundFile(path, sound);
  const sizeBytes = (await stat(path)).size;
  await addUpload(db, { recordingId, lessonId, name: 'lesson.m4a', sizeBytes, createdAt: new Date() });
  await moveRecording(db, recordingId, ['receiving'], 'waiting');
  await ingestRecording(work, { recordingId }, attempt);
  return recordingId;
}

const recordingOf = async (lessonId: string): Promise<string | null> =>
  (await db.lesson.findUniqueOrThrow({ where: { id: lessonId } })).recordingId;

async function aTaughtLesson(): Promise<LessonRows> {
  const rows = await aLesson(db, { content });
  const saved = await saveDraft(bench, {
    ...rows,
    saveId: randomUUID(),
    baseVersion: 1,
    changes: [{ kind: 'cues', put: cues, remove: [] }],
  });
  expect(saved).toEqual({ ok: true, value: { version: 2 } });
  return rows;
}

test('a re-edited recording is compared, and one decision moves all of a lesson with it', {
  timeout: 120_000,
}, async () => {
  const rows = await aTaughtLesson();
  const first = await bringIn(rows.lessonId, old);
  expect(await recordingOf(rows.lessonId)).toBe(first);
  expect(await openComparison(db, rows.lessonId)).toBeNull();

  const second = await bringIn(rows.lessonId, edited);
  expect(await recordingOf(rows.lessonId)).toBe(first);
  const waiting = await openComparison(db, rows.lessonId);
  expect(waiting).toMatchObject({ state: 'waiting', oldRecordingId: first, newRecordingId: second });
  const comparisonId = waiting?.id ?? '';
  const sent: string[] = [];
  await queueComparisons(work, {
    send: async (_name, payload) => {
      sent.push(JSON.stringify(payload));
      return true;
    },
  });
  expect(sent).toEqual([JSON.stringify({ comparisonId })]);

  // A worker that is killed leaves it to the next one.
  const killed = new AbortController();
  killed.abort(new Error('killed'));
  await expect(
    compareRecordings(work, { comparisonId }, { ...attempt, signal: killed.signal }),
  ).rejects.toThrow();
  expect(await comparisonsToDo(db)).toEqual([comparisonId]);
  await compareRecordings(work, { comparisonId }, attempt);
  await compareRecordings(work, { comparisonId }, attempt);

  const ready = await openComparison(db, rows.lessonId);
  const list = ready?.list;
  expect(ready?.state).toBe('ready');
  if (!list) throw new Error('there is a list');
  const before = await findDraft(db, rows);
  if (!before) throw new Error('there is a draft');
  const retakes = retakesIn(list).map(({ cut }) => cut);
  const carried = carryOver(before, list, { wordsStay: new Set(retakes) });
  const decisions =
    retakes.length +
    carried.needWords.length +
    [...carried.cut.values()].flat().filter(({ of }) => of === 'step').length +
    1;
  console.log(
    `${editPointsOf(list).length} edit points; ${decisions} decisions; carried ${JSON.stringify(carried.carried)}`,
  );
  expect(editPointsOf(list)).toHaveLength(3);
  expect(decisions).toBeLessThan(10);

  const wish = {
    ...rows,
    comparisonId,
    decision: {
      decision: 'move',
      saveId: randomUUID(),
      version: before.version,
      list,
      wordsStay: retakes,
      heard: [],
    } as const,
  };
  const late = { ...wish, decision: { ...wish.decision, version: before.version - 1 } };
  expect(await decideRecording(bench, late)).toMatchObject({ ok: false, fault: { code: 'draft-is-newer' } });
  const answers = await Promise.all([decideRecording(bench, wish), decideRecording(bench, wish)]);
  expect(answers).toEqual([1, 2].map(() => ({ ok: true, value: { version: before.version + 1 } })));
  expect(await decideRecording(bench, { ...wish, decision: { decision: 'refuse' } })).toEqual({
    ok: false,
    fault: { code: 'decided-before' },
  });

  expect(await recordingOf(rows.lessonId)).toBe(second);
  const after = await findDraft(db, rows);
  const starts = new Map(after?.cues.map(({ id, startMs }) => [id, startMs]));
  for (const [cue, expected] of [
    ['cue-50', 23_050],
    ['cue-99', 52_450],
    ['cue-200', 53_050],
    ['cue-290', 108_050],
  ] as const) {
    expect(Math.abs((starts.get(cue) ?? 0) - expected)).toBeLessThan(60);
  }
  // The words of 7 s and of a minute are gone; what was said again kept its own.
  expect(after?.cues.length).toBe(300 - 12 - 100);
  expect(after?.cues.filter(({ timing }) => timing === 'approximate').map(({ id }) => id)).toEqual([
    'cue-240',
    'cue-241',
    'cue-242',
    'cue-243',
    'cue-244',
    'cue-245',
    'cue-246',
  ]);
  // Of the chapters from 60 to 120 s nothing is left.
  expect(after?.content.chapters.map(({ id }) => id)).toEqual(
    content.chapters.map(({ id }) => id).filter((id) => !['ch-4', 'ch-5', 'ch-6', 'ch-7'].includes(id)),
  );
  // The old recording and its files stay for the revisions that show it.
  const kept = await db.recording.findUniqueOrThrow({ where: { id: first } });
  expect(kept.state).toBe('ready');
  expect(await work.storage.size(kept.playableKey ?? '')).not.toBeNull();
});

test('an accepted recording is taken back, with what was written since, and can be decided about anew', {
  timeout: 60_000,
}, async () => {
  const rows = await aTaughtLesson();
  const first = await bringIn(rows.lessonId, old.slice(0, at(40)));
  const second = await bringIn(rows.lessonId, old.slice(at(7), at(40)));
  const comparisonId = (await openComparison(db, rows.lessonId))?.id ?? '';
  await compareRecordings(work, { comparisonId }, attempt);
  const list = (await openComparison(db, rows.lessonId))?.list;
  const before = await findDraft(db, rows);
  if (!list || !before) throw new Error('there are a list and a draft');
  const decision = { decision: 'move', list, wordsStay: [], heard: [], version: before.version } as const;
  const accept = { ...rows, comparisonId, decision: { ...decision, saveId: randomUUID() } };
  expect(await decideRecording(bench, accept)).toMatchObject({ ok: true });
  const moved = await findDraft(db, rows);
  expect(moved?.cues[0]?.id).toBe('cue-12');
  const said = moved?.cues.find(({ id }) => id === 'cue-20');
  if (!moved || !said) throw new Error('there is the cue');
  const reworded = { ...said, text: 'Reworded since' };
  const changes = [{ kind: 'cues' as const, put: [reworded], remove: [] }];
  await saveDraft(bench, { ...rows, saveId: randomUUID(), baseVersion: moved.version, changes });

  const wish = { ...rows, comparisonId, saveId: randomUUID(), version: moved.version + 1 };
  expect(await takeBackRecording(bench, { ...wish, version: moved.version })).toMatchObject({
    fault: { code: 'draft-is-newer' },
  });
  expect(await takeBackRecording(bench, { ...wish, comparisonId: 'none' })).toMatchObject({
    fault: { code: 'not-the-latest' },
  });
  const answers = await Promise.all([takeBackRecording(bench, wish), takeBackRecording(bench, wish)]);
  expect(answers).toEqual([1, 2].map(() => ({ ok: true, value: { version: moved.version + 2 } })));
  expect(await recordingOf(rows.lessonId)).toBe(first);
  const after = await findDraft(db, rows);
  const others = (draft: typeof after) => draft?.cues.filter(({ id }) => id !== 'cue-20');
  expect(others(after)).toEqual(others(before));
  expect(after?.content).toEqual(before.content);
  const back = after?.cues.find(({ id }) => id === 'cue-20');
  expect(back?.text).toBe('Reworded since');
  expect(Math.abs((back?.startMs ?? 0) - 12_050)).toBeLessThanOrEqual(20);

  expect(await openComparison(db, rows.lessonId)).toMatchObject({ id: comparisonId, state: 'ready' });
  const leave = { ...rows, comparisonId, decision: { decision: 'leave' } as const };
  expect(await decideRecording(bench, leave)).toMatchObject({ ok: true });
  expect(await recordingOf(rows.lessonId)).toBe(second);
  const again = { ...wish, saveId: randomUUID(), version: moved.version + 2 };
  expect(await takeBackRecording(bench, again)).toEqual({ ok: true, value: { version: moved.version + 2 } });
  expect(await recordingOf(rows.lessonId)).toBe(first);
});

test('a refused recording changes nothing, and a lesson without words takes a new one at once', {
  timeout: 60_000,
}, async () => {
  const rows = await aTaughtLesson();
  const short = old.slice(0, at(20));
  const first = await bringIn(rows.lessonId, short);
  await bringIn(rows.lessonId, short.slice(at(2)));
  const open = await openComparison(db, rows.lessonId);
  const decision = { decision: 'refuse' } as const;
  const refused = await decideRecording(bench, { ...rows, comparisonId: open?.id ?? '', decision });
  expect(refused).toEqual({ ok: true, value: { version: 2 } });
  expect(await recordingOf(rows.lessonId)).toBe(first);
  expect((await findDraft(db, rows))?.cues).toHaveLength(300);

  const third = await bringIn(rows.lessonId, short.slice(at(3)));
  const again = await openComparison(db, rows.lessonId);
  const leave = { ...rows, comparisonId: again?.id ?? '', decision: { decision: 'leave' } as const };
  expect(await decideRecording(bench, leave)).toEqual({ ok: true, value: { version: 2 } });
  expect(await recordingOf(rows.lessonId)).toBe(third);

  const empty = await aLesson(db);
  await bringIn(empty.lessonId, short);
  const newer = await bringIn(empty.lessonId, short.slice(at(1)));
  expect(await recordingOf(empty.lessonId)).toBe(newer);
  expect(await openComparison(db, empty.lessonId)).toBeNull();
});
