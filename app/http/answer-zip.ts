/** Answers with files as one zip, made while it is sent. */
import { type CopyEntry, writeZip } from '#lib/copies/write-zip.ts';
import { attachment } from './attachment.ts';

/** @param name under which a browser saves it */
export const answerZip = (entries: AsyncIterable<CopyEntry>, name: string): Response =>
  new Response(writeZip(entries), {
    headers: {
      'content-type': 'application/zip',
      'content-disposition': attachment(name),
      'cache-control': 'private, no-store',
      'x-content-type-options': 'nosniff',
    },
  });
