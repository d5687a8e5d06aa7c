/** Why a portable copy was not read. Kept as JSON in its row; worded in app/words. */
import { z } from 'zod';
import { recordingFault } from '#lib/recording/fault.ts';

const name = z.string().max(400);

export const copyFault = z.discriminatedUnion('code', [
  z.object({ code: z.literal('not-a-zip') }),
  z.object({ code: z.literal('incomplete') }),
  z.object({ code: z.literal('too-many-files'), most: z.int() }),
  /** A name that leads out of the folder, or that some machine could not keep. */
  z.object({ code: z.literal('name-not-plain'), name }),
  /** Two files whose names differ in no letter, or in capitals only. */
  z.object({ code: z.literal('name-twice'), name }),
  z.object({ code: z.literal('is-a-link'), name }),
  z.object({ code: z.literal('is-locked'), name }),
  z.object({ code: z.literal('packed-otherwise'), name }),
  /** Two files share bytes of the archive. */
  z.object({ code: z.literal('files-overlap'), name }),
  z.object({ code: z.literal('file-too-large'), name, mostBytes: z.int() }),
  /** Packed so tightly that only a trap is. */
  z.object({ code: z.literal('blown-up'), name }),
  z.object({ code: z.literal('file-damaged'), name }),
  z.object({ code: z.literal('no-lesson') }),
  z.object({ code: z.literal('too-many-lessons'), most: z.int() }),
  z.object({ code: z.literal('file-missing'), name }),
  /** `where` is a path inside the document. */
  z.object({ code: z.literal('not-as-described'), name, where: z.string().max(300) }),
  z.object({ code: z.literal('newer-form'), name }),
  z.object({ code: z.literal('revisions-out-of-order'), name }),
  z.object({ code: z.literal('not-a-picture'), name }),
  z.object({ code: z.literal('recording-not-taken'), name, fault: recordingFault }),
  /** It can be decoded, but is not what a page plays as it is. */
  z.object({ code: z.literal('recording-not-for-pages'), name }),
  z.object({ code: z.literal('disk-full') }),
  z.object({ code: z.literal('gave-up') }),
]);
export type CopyFault = Readonly<z.infer<typeof copyFault>>;

/** Thrown where a copy turns out to be unreadable while it is read. */
export class CopyRefused extends Error {
  readonly fault: CopyFault;
  constructor(fault: CopyFault) {
    super(`The copy is refused: ${fault.code}`);
    this.fault = fault;
  }
}
