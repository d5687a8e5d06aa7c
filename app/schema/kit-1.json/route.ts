/** The schema that kit.json keeps to; it changes only with its number. */
import { answerText } from '#app/http/answer-text.ts';
import { withAnyone } from '#app/http/with-member.ts';
import { environment } from '#lib/config/environment.ts';
import { kitJsonSchema } from '#lib/kit/kit-json.ts';

export const GET = withAnyone(async (request) => {
  const schema = kitJsonSchema(`${environment().BENCHLEAF_ADDRESS}/schema/kit-1.json`);
  return answerText(request, `${JSON.stringify(schema, null, 2)}\n`, {
    type: 'application/schema+json',
    cache: 'public, max-age=86400',
  });
});
