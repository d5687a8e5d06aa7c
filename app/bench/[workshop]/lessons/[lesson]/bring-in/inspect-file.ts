/** Looks into a file in the browser before anything is sent: a wrong one is refused at once. */

import type { RecordingFault } from '#lib/recording/fault.ts';
import { readLayout } from '#lib/recording/layout.ts';
import { SNIFF_BYTES, sniff } from '#lib/recording/sniff.ts';
import { failed, ok, type Result } from '#lib/result.ts';

/** What the browser could read; null where only the server will know. */
export interface FileFacts {
  readonly durationMs: number | null;
  readonly width: number | null;
  readonly height: number | null;
  readonly videoCodec: string | null;
  readonly audioCodec: string | null;
}

const NOTHING: FileFacts = {
  durationMs: null,
  width: null,
  height: null,
  videoCodec: null,
  audioCodec: null,
};
/** A strange file must not keep her waiting, ms. */
const PATIENCE_MS = 8_000;

export async function inspectFile(file: File): Promise<Result<FileFacts, RecordingFault>> {
  const readAt = async (at: number, length: number): Promise<Uint8Array> =>
    new Uint8Array(await file.slice(at, at + length).arrayBuffer());
  const sniffed = sniff(await readAt(0, SNIFF_BYTES));
  if (!sniffed.ok) return sniffed;
  const layout = await readLayout(sniffed.value, readAt, file.size);
  if (!layout.hasIndex) return failed({ code: 'index-missing' });
  const facts = await Promise.race([
    readFacts(file).catch(() => NOTHING),
    new Promise<FileFacts>((resolve) => setTimeout(resolve, PATIENCE_MS, NOTHING)),
  ]);
  return facts ? ok(facts) : failed({ code: 'no-sound-nor-picture' });
}

async function readFacts(file: File): Promise<FileFacts | null> {
  const { ALL_FORMATS, BlobSource, Input } = await import('mediabunny');
  const input = new Input({ source: new BlobSource(file), formats: ALL_FORMATS });
  try {
    const video = await input.getPrimaryVideoTrack();
    const audio = await input.getPrimaryAudioTrack();
    if (!video && !audio) return null;
    const seconds = await input.getDurationFromMetadata();
    return {
      durationMs:
        seconds !== null && Number.isFinite(seconds) && seconds > 0 ? Math.round(seconds * 1000) : null,
      width: video ? await video.getDisplayWidth() : null,
      height: video ? await video.getDisplayHeight() : null,
      videoCodec: video ? await video.getCodec() : null,
      audioCodec: audio ? await audio.getCodec() : null,
    };
  } finally {
    input.dispose();
  }
}
