/** Words about portable copies: why one is not taken, and what is being read. */
import type { CopyFault } from '#lib/copies/copy-fault.ts';
import { recordingFaultWords, sizeWords } from './recording-words.ts';

/** What is wrong, and what to do; a sentence or two. */
export function copyFaultWords(fault: CopyFault): string {
  switch (fault.code) {
    case 'not-a-zip':
      return 'This file is no zip, or only a part of one. Take the copy out again, or send it again.';
    case 'incomplete':
      return 'Not all of the file arrived. Send it again.';
    case 'too-many-files':
      return `There are more than ${fault.most} files in it, more than any copy has.`;
    case 'name-not-plain':
      return `A file in it is called “${fault.name}”. Such a name can lead out of its folder, so nothing was unpacked.`;
    case 'name-twice':
      return `Two files in it are called “${fault.name}”, or differ in capitals only.`;
    case 'is-a-link':
      return `“${fault.name}” in it is a link or a device, not a file. Pack plain files only.`;
    case 'is-locked':
      return `“${fault.name}” in it is locked with a password. Pack it again without one.`;
    case 'packed-otherwise':
      return `“${fault.name}” is packed in a way that is not read here. Pack it again as an ordinary zip.`;
    case 'files-overlap':
      return `“${fault.name}” shares its bytes with another file, as no ordinary zip does. Nothing was unpacked.`;
    case 'file-too-large':
      return `“${fault.name}” is larger than ${sizeWords(fault.mostBytes)}, the most that is taken.`;
    case 'blown-up':
      return `“${fault.name}” would grow beyond measure when unpacked. Nothing was unpacked.`;
    case 'file-damaged':
      return `“${fault.name}” is damaged. Take the copy out again, or send it again.`;
    case 'no-lesson':
      return 'There is no lesson in this zip. A portable copy holds a lesson.json in a folder for each lesson.';
    case 'too-many-lessons':
      return `There are more than ${fault.most} lessons in it. Bring them in in several parts.`;
    case 'file-missing':
      return `“${fault.name}” is missing in it. Take the copy out again.`;
    case 'not-as-described':
      return fault.where === ''
        ? `“${fault.name}” cannot be read as what it should be. If it was changed by hand, compare it with the schema beside it.`
        : `“${fault.name}” is not as its schema describes, at “${fault.where}”. If it was changed by hand, put it back.`;
    case 'newer-form':
      return `“${fault.name}” was written by a later version of this program. Bring this one up to date first.`;
    case 'revisions-out-of-order':
      return `The revisions in “${fault.name}” are not in order. Revisions count up from 1, each later than the one before.`;
    case 'not-a-picture':
      return `“${fault.name}” is not a JPEG picture.`;
    case 'recording-not-taken':
      return `The recording “${fault.name}” was not taken. ${recordingFaultWords(fault.fault)}`;
    case 'recording-not-for-pages':
      return `The recording “${fault.name}” is not what a page can play as it is. Bring it in at a lesson of its own, as a new recording.`;
    case 'disk-full':
      return 'The server’s disk has no room for what is in it. Make room there, then send it again.';
    case 'gave-up':
      return 'Reading it failed several times, and not through the file’s fault. Send it again; if that fails too, look into the server’s log.';
  }
}

/** Where a copy stands that is not read yet. */
export const copyStateWords = (state: 'receiving' | 'waiting' | 'reading', step: string | null): string =>
  state === 'receiving'
    ? 'Not all of it has arrived. Choose the same file again to go on.'
    : state === 'waiting'
      ? 'Waiting to be read.'
      : step === null
        ? 'Being read.'
        : `Being read: ${step}`;
