/**
 * Comparing a re-edited recording with the old one by its sound, on edits whose
 * truth is known. `RETIMING_EDITS` says how many are tried, of how long
 * recordings `RETIMING_SECONDS`; the aims hold for at least 32 of five minutes.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { editSound, judge, quantile, silenceIn, TREATMENTS, type Treatment, treat } from './edited-sound.ts';
import { MADE_RATE, mix, speak, VOICES, workshop } from './made-sound.ts';
import { compareWhole, ownRecordings, spokenRecordings, tryEdit } from './recordings.ts';

const EDITS = Number(process.env['RETIMING_EDITS'] ?? 4);
const SECONDS = Number(process.env['RETIMING_SECONDS'] ?? 50);
const isWhole = EDITS >= 32;
const folder = mkdtempSync(join(tmpdir(), 'retiming-'));
afterAll(() => rmSync(folder, { recursive: true }));

const AS_IT_IS: Treatment = { name: 'aac 128k', codec: ['-c:a', 'aac', '-b:a', '128k'], ending: 'mp4' };
const voice = VOICES[0] ?? { pitch: 110, mouth: 1, syllablesPerSecond: 4 };
const otherVoice = VOICES[1] ?? voice;

test('edits of several recordings under several treatments are found', { timeout: 3_600_000 }, () => {
  const recordings = [...ownRecordings(SECONDS), ...(isWhole ? spokenRecordings(SECONDS) : [])];
  const verdicts = Array.from({ length: EDITS }, (_, k) => {
    const recording = recordings[k % recordings.length] ?? ownRecordings(SECONDS)[0];
    // Every recording meets every treatment before a pair comes again.
    const treatment = TREATMENTS[(k + Math.floor(k / recordings.length)) % TREATMENTS.length] ?? AS_IT_IS;
    if (!recording) throw new Error('there are recordings');
    const verdict = tryEdit(recording, treatment, 100 + k, folder);
    if (isWhole) {
      const points = verdict.pointErrors.map(Math.round).join(' ');
      console.log(
        `${recording.name} | ${treatment.name} | map ${quantile(verdict.mapErrors, 0.95).toFixed(1)} ms | points ${points} | cuts ${verdict.cutsFound}/${verdict.cuts} | spurious ${verdict.spurious} | wrong side ${verdict.wrongSide.toFixed(2)} %`,
      );
    }
    return verdict;
  });
  const mapErrors = verdicts.flatMap((verdict) => verdict.mapErrors);
  const pointErrors = verdicts.flatMap((verdict) => verdict.pointErrors);
  const sum = (of: (verdict: (typeof verdicts)[0]) => number): number =>
    verdicts.reduce((all, one) => all + of(one), 0);
  const hours = sum(({ newSeconds }) => newSeconds) / 3600;
  const pointsNear = pointErrors.filter((error) => error <= 100).length / pointErrors.length;
  const cutsFound = sum((verdict) => verdict.cutsFound) / sum((verdict) => verdict.cuts);
  const spurious = sum((verdict) => verdict.spurious);
  console.log(
    [
      `${EDITS} edits of ${recordings.length} recordings, ${hours.toFixed(2)} h of new sound`,
      `kept sound: median ${quantile(mapErrors, 0.5).toFixed(1)} ms, 95 % within ${quantile(mapErrors, 0.95).toFixed(1)} ms`,
      `edit points within 100 ms: ${(100 * pointsNear).toFixed(1)} % of ${pointErrors.length}`,
      `cuts of 1 s or more found: ${(100 * cutsFound).toFixed(1)} % of ${sum((verdict) => verdict.cuts)}`,
      `spurious edit points: ${spurious}; kept or new mistaken: ${(sum((verdict) => verdict.wrongSide) / EDITS).toFixed(2)} %`,
    ].join('\n'),
  );
  expect(quantile(mapErrors, 0.5)).toBeLessThanOrEqual(20);
  expect(quantile(mapErrors, 0.95)).toBeLessThanOrEqual(40);
  expect(pointsNear).toBeGreaterThanOrEqual(0.9);
  expect(cutsFound).toBeGreaterThanOrEqual(0.95);
  expect(spurious).toBeLessThanOrEqual(hours);
});

const SPEEDS = [
  {
    name: 'a hundredth faster, as a tape',
    filters: 'asetrate=16160,aresample=16000',
    speed: 1.01,
    pitchMoved: true,
  },
  { name: 'a hundredth faster at the same pitch', filters: 'atempo=1.01', speed: 1.01, pitchMoved: false },
  ...(isWhole
    ? [
        {
          name: 'a thousandth slower',
          filters: 'asetrate=15984,aresample=16000',
          speed: 0.999,
          pitchMoved: true,
        },
        {
          name: 'from 24 to 25 pictures a second',
          filters: 'asetrate=16667,aresample=16000',
          speed: 16_667 / 16_000,
          pitchMoved: true,
        },
        { name: 'a tenth faster at the same pitch', filters: 'atempo=1.1', speed: 1.1, pitchMoved: false },
      ]
    : []),
];

test.each(SPEEDS)(
  'a changed speed is recognised: $name',
  { timeout: 600_000 },
  ({ filters, speed, pitchMoved }) => {
    const old = mix([speak(otherVoice, SECONDS, 21), 1], [workshop(SECONDS, 22), 0.5]);
    const made = editSound(old, speak(voice, 20, 23), 24, false);
    const list = compareWhole(
      treat(old, AS_IT_IS, folder),
      treat(made.sound, { ...AS_IT_IS, filters }, folder),
    );
    const { mapErrors, cuts, cutsFound } = judge(list, made, {
      delayMs: 0,
      isSilent: silenceIn(made.sound),
      speed,
    });
    console.log(
      `speed ${list.speed.toFixed(5)} for ${speed.toFixed(5)}; kept sound: 95 % within ${quantile(mapErrors, 0.95).toFixed(1)} ms; cuts ${cutsFound}/${cuts}`,
    );
    expect(Math.abs(list.speed / speed - 1)).toBeLessThan(0.001);
    expect(list.pitchMoved).toBe(pitchMoved);
    expect(mapErrors.length).toBeGreaterThan((SECONDS * 10) / 2);
    expect(quantile(mapErrors, 0.95)).toBeLessThanOrEqual(100);
    expect(cutsFound).toBe(cuts);
  },
);

test('a sentence said anew in place, to the same length, is found', { timeout: 120_000 }, () => {
  const old = speak(voice, 40, 31);
  const sound = old.slice();
  sound.set(speak(otherVoice, 4, 32).slice(0, 3 * MADE_RATE), 20 * MADE_RATE);
  const { edits } = compareWhole(treat(old, AS_IT_IS, folder), treat(sound, AS_IT_IS, folder));
  const inserted = edits.filter(({ kind }) => kind === 'inserted');
  expect(edits.filter(({ kind }) => kind === 'kept')).toHaveLength(2);
  expect(inserted).toHaveLength(1);
  expect(Math.abs((inserted[0]?.new.startMs ?? 0) - 20_000)).toBeLessThan(300);
  expect(Math.abs((inserted[0]?.new.endMs ?? 0) - 23_000)).toBeLessThan(300);
});

test('another recording has nothing in common', { timeout: 120_000 }, () => {
  const { edits } = compareWhole(
    treat(speak(voice, 14, 41), AS_IT_IS, folder),
    treat(speak(otherVoice, 12, 42), AS_IT_IS, folder),
  );
  expect(edits.map(({ kind }) => kind)).toEqual(['cut', 'inserted']);
});

test.each([
  ['nothing at all', 0, 0],
  ['a tenth of a second', 800, 400],
  ['silence', 80_000, 60_000],
])('%s is compared without a fault', (_, oldSamples, newSamples) => {
  const list = compareWhole(new Int16Array(oldSamples), new Int16Array(newSamples));
  expect(list.oldMs).toBe(oldSamples / 8);
  expect(list.newMs).toBe(newSamples / 8);
});

test('the same file is kept whole', { timeout: 120_000 }, () => {
  const sound = treat(speak(voice, 30, 51), AS_IT_IS, folder);
  const { edits, speed } = compareWhole(sound, sound);
  expect(speed).toBe(1);
  expect(edits.map(({ kind }) => kind)).toEqual(['kept']);
});
