import { attachment } from './attachment.ts';

/** Answers a member with a file that was made for her; nothing between keeps it. */
export const answerFile = (
  { body, type }: { readonly body: BodyInit; readonly type: string },
  name: string,
): Response =>
  new Response(body, {
    headers: {
      'content-type': type,
      'content-disposition': attachment(name),
      'x-content-type-options': 'nosniff',
      'cache-control': 'private, no-store',
    },
  });
