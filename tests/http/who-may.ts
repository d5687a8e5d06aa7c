/**
 * Who may use which page and route: the one list that the enumeration in
 * every-route-asks.test.ts holds against what is on disk. A route that is not
 * in it fails that test; so add a new one here, with the least role it needs.
 */

import { DEFAULT_SETUP } from '#lib/description/description-setup.ts';

export type Who = 'public' | 'signed-in' | 'viewer' | 'editor' | 'owner';

export interface Rule {
  readonly who: Who;
  /** A body that would be accepted, for methods that read one. */
  readonly body?: unknown;
  /** Headers that the route's protocol asks for. */
  readonly headers?: Readonly<Record<string, string>>;
}

const REVISION = 'workshop/[workshop]/lesson/[lesson]/revision/[number]';
const LESSON_API = 'api/workshops/[workshop]/lessons/[lesson]';
const RECORDING_API = `${LESSON_API}/recordings/[recording]`;

const NO_RINGS = {
  making: { start: [], repeat: [], finishing: [], ringKinds: [], leaning: 'none' },
  roll: 0,
  side: 'front',
};

const read = (who: Who) => ({ GET: { who }, HEAD: { who } });

/** By the file's path below app/, without its last part: methods, or `page`. */
export const WHO_MAY: Readonly<Record<string, Readonly<Record<string, Rule>>>> = {
  'page.tsx': { page: { who: 'public' } },
  'sign-in/page.tsx': { page: { who: 'public' } },
  'invitation/[token]/page.tsx': { page: { who: 'public' } },
  'new-password/[token]/page.tsx': { page: { who: 'public' } },
  'account/page.tsx': { page: { who: 'signed-in' } },
  'bench/page.tsx': { page: { who: 'signed-in' } },
  'bench/[workshop]/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/members/page.tsx': { page: { who: 'owner' } },
  'bench/[workshop]/glossary/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/settings/page.tsx': { page: { who: 'owner' } },
  'bench/[workshop]/description/page.tsx': { page: { who: 'owner' } },
  'draft/[workshop]/[lesson]/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/lessons/[lesson]/preview/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/lessons/[lesson]/bring-in/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/lessons/[lesson]/bring-in/new-recording/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/lessons/[lesson]/transcript/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/lessons/[lesson]/making/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/lessons/[lesson]/kit/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/lessons/[lesson]/check/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/lessons/[lesson]/corrections/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/lessons/[lesson]/corrections/revisions/page.tsx': { page: { who: 'viewer' } },
  'bench/[workshop]/lessons/[lesson]/corrections/reports/page.tsx': { page: { who: 'viewer' } },

  'workshop/[workshop]/page.tsx': { page: { who: 'public' } },
  'workshop/[workshop]/lesson/[lesson]/page.tsx': { page: { who: 'public' } },
  'workshop/[workshop]/lesson/[lesson]/kit/[number]/page.tsx': { page: { who: 'public' } },
  'workshop/[workshop]/lesson/[lesson]/embed/route.ts': { GET: { who: 'public' } },
  'oembed/route.ts': { GET: { who: 'public' } },
  [`${REVISION}/page.tsx`]: { page: { who: 'public' } },
  'workshop/[workshop]/feed.atom/route.ts': { GET: { who: 'public' } },
  'workshop/[workshop]/corrections.atom/route.ts': { GET: { who: 'public' } },
  'workshop/[workshop]/lesson/[lesson]/corrections.atom/route.ts': { GET: { who: 'public' } },
  'workshop/[workshop]/lesson/[lesson]/report/route.ts': { POST: { who: 'public' } },
  'workshop/[workshop]/podcast.xml/route.ts': { GET: { who: 'public' } },
  [`${REVISION}/[file]/route.ts`]: read('public'),
  [`${REVISION}/description.txt/route.ts`]: { GET: { who: 'public' } },
  [`${REVISION}/sheet.pdf/route.ts`]: { GET: { who: 'public' } },
  [`${REVISION}/steps.jsonld/route.ts`]: { GET: { who: 'public' } },
  [`${REVISION}/kit/[file]/route.ts`]: { GET: { who: 'public' } },
  [`${REVISION}/poster.jpg/route.ts`]: read('public'),
  [`${REVISION}/recording/route.ts`]: read('public'),
  [`${REVISION}/pictures/[picture]/route.ts`]: { GET: { who: 'public' } },
  [`${REVISION}/stills/[still]/route.ts`]: read('public'),

  'preview/[token]/page.tsx': { page: { who: 'public' } },
  'preview/[token]/[file]/route.ts': { GET: { who: 'public' } },
  'preview/[token]/poster.jpg/route.ts': read('public'),
  'preview/[token]/recording/route.ts': read('public'),
  'preview/[token]/sheet.pdf/route.ts': { GET: { who: 'public' } },
  'preview/[token]/pictures/[picture]/route.ts': { GET: { who: 'public' } },
  'preview/[token]/stills/[atMs]/route.ts': read('public'),

  'schema/kit-1.json/route.ts': { GET: { who: 'public' } },

  'api/auth/sign-in/route.ts': { POST: { who: 'public' } },
  'api/auth/new-password/route.ts': { POST: { who: 'public' } },
  'api/auth/sign-out/route.ts': { POST: { who: 'public' } },
  'api/invitation/found/route.ts': { POST: { who: 'public' } },
  'api/invitation/join/route.ts': { POST: { who: 'public' } },
  'api/account/route.ts': { PATCH: { who: 'signed-in' } },
  'api/account/password/route.ts': { POST: { who: 'signed-in' } },
  'api/account/sign-out-everywhere/route.ts': { POST: { who: 'signed-in' } },
  'api/workshops/route.ts': { POST: { who: 'signed-in' } },
  'api/workshops/[workshop]/route.ts': { PATCH: { who: 'owner', body: { about: 'Rings.' } } },
  'api/workshops/[workshop]/description-setup/route.ts': {
    PUT: { who: 'owner', body: DEFAULT_SETUP },
    DELETE: { who: 'owner' },
  },
  'api/workshops/[workshop]/portable-copy/route.ts': { GET: { who: 'owner' } },
  'api/workshops/[workshop]/portable-copies/route.ts': { GET: { who: 'editor' } },
  'api/workshops/[workshop]/portable-copies/[copy]/route.ts': { DELETE: { who: 'editor' } },
  'api/workshops/[workshop]/stock/route.ts': {
    GET: { who: 'viewer' },
    PUT: {
      who: 'editor',
      body: { key: 'ring / 1', name: 'ring', unit: 'ring', onHandMilli: 1000, offer: null },
    },
  },
  'api/workshops/[workshop]/members/[member]/route.ts': {
    PATCH: { who: 'owner', body: { role: 'viewer' } },
    DELETE: { who: 'owner' },
  },
  'api/workshops/[workshop]/invitations/route.ts': {
    POST: { who: 'owner', body: { role: 'viewer', note: '' } },
  },
  'api/workshops/[workshop]/invitations/[invitation]/route.ts': { DELETE: { who: 'owner' } },
  'api/workshops/[workshop]/glossary/route.ts': {
    GET: { who: 'viewer' },
    POST: { who: 'editor', body: { term: 'maille' } },
  },
  'api/workshops/[workshop]/glossary/terms/[term]/route.ts': { DELETE: { who: 'editor' } },
  'api/workshops/[workshop]/glossary/decisions/route.ts': {
    POST: { who: 'editor', body: { heard: 'busy time', instead: 'byzantine', verdict: 'taken' } },
  },
  'api/workshops/[workshop]/lessons/route.ts': { POST: { who: 'editor', body: { title: 'A lesson' } } },
  [`${LESSON_API}/route.ts`]: { DELETE: { who: 'editor' } },
  [`${LESSON_API}/draft/route.ts`]: {
    GET: { who: 'viewer' },
    PATCH: {
      who: 'editor',
      body: {
        saveId: '00000000-0000-4000-8000-000000000001',
        baseVersion: 1,
        changes: [{ kind: 'set', field: 'title', value: 'Taken over' }],
      },
    },
  },
  [`${LESSON_API}/copied-texts/route.ts`]: {
    PUT: { who: 'editor', body: { format: 'text', text: 'Taken along.' } },
  },
  [`${LESSON_API}/reports/route.ts`]: { DELETE: { who: 'editor' } },
  [`${LESSON_API}/reports/[report]/route.ts`]: {
    PATCH: { who: 'editor', body: { answer: 'Looked into it.' } },
    DELETE: { who: 'editor' },
  },
  [`${LESSON_API}/revisions/route.ts`]: {
    POST: { who: 'editor', body: { requestId: '00000000-0000-4000-8000-000000000002', version: 1 } },
  },
  [`${LESSON_API}/revisions/[number]/bring-back/route.ts`]: {
    POST: { who: 'editor', body: { saveId: '00000000-0000-4000-8000-000000000003', version: 1 } },
  },
  [`${LESSON_API}/preview-addresses/route.ts`]: { POST: { who: 'editor', body: { note: '' } } },
  [`${LESSON_API}/preview-addresses/[preview]/route.ts`]: { DELETE: { who: 'editor' } },
  [`${LESSON_API}/portable-copy/route.ts`]: { GET: { who: 'viewer' } },
  [`${LESSON_API}/sheet.pdf/route.ts`]: { GET: { who: 'viewer' } },
  [`${LESSON_API}/revisions/[number]/files/route.ts`]: {
    GET: { who: 'viewer' },
    POST: { who: 'editor' },
  },
  [`${LESSON_API}/exports/[file]/route.ts`]: { GET: { who: 'viewer' } },
  [`${LESSON_API}/kit-files/[file]/route.ts`]: { GET: { who: 'viewer' } },
  [`${LESSON_API}/kit-batches/route.ts`]: {
    POST: {
      who: 'editor',
      body: {
        id: '00000000-0000-4000-8000-000000000004',
        revision: 1,
        madeOn: '2026-05-04',
        rule: 'per kit',
        kits: [{ name: 'small', bodyMm: 150, times: 2 }],
        note: '',
      },
    },
  },
  [`${LESSON_API}/kit-batches/[batch]/route.ts`]: { DELETE: { who: 'editor' } },
  [`${LESSON_API}/kit-batches/[batch]/[file]/route.ts`]: { GET: { who: 'viewer' } },
  [`${LESSON_API}/places/[place]/route.ts`]: {
    PUT: { who: 'editor', body: { revision: 1, ticked: true } },
    DELETE: { who: 'editor' },
  },
  [`${LESSON_API}/pictures/route.ts`]: { POST: { who: 'viewer', body: NO_RINGS } },
  [`${LESSON_API}/pictures/[picture]/route.ts`]: { GET: { who: 'viewer' } },
  [`${LESSON_API}/transcript-files/route.ts`]: {
    GET: { who: 'viewer' },
    POST: { who: 'editor', headers: { 'content-type': 'application/octet-stream', 'x-file-name': 'a.vtt' } },
  },
  [`${LESSON_API}/transcript-files/[file]/route.ts`]: {
    GET: { who: 'viewer' },
    POST: { who: 'editor', body: {} },
  },
  [`${LESSON_API}/comparison/route.ts`]: {
    GET: { who: 'viewer' },
    POST: { who: 'editor', body: { from: 'another' } },
  },
  [`${LESSON_API}/comparison/[comparison]/transcript/route.ts`]: { GET: { who: 'viewer' } },
  [`${LESSON_API}/comparison/[comparison]/route.ts`]: {
    POST: { who: 'editor', body: { decision: 'refuse' } },
  },
  [`${LESSON_API}/comparison/[comparison]/take-back/route.ts`]: {
    POST: { who: 'editor', body: { saveId: '00000000-0000-4000-8000-000000000004', version: 1 } },
  },
  [`${LESSON_API}/recordings/route.ts`]: { GET: { who: 'viewer' } },
  [`${RECORDING_API}/route.ts`]: { GET: { who: 'viewer' }, DELETE: { who: 'editor' } },
  [`${RECORDING_API}/cancel/route.ts`]: { POST: { who: 'editor' } },
  [`${RECORDING_API}/retry/route.ts`]: { POST: { who: 'editor' } },
  [`${RECORDING_API}/media/route.ts`]: read('viewer'),
  [`${RECORDING_API}/chapters/route.ts`]: { GET: { who: 'viewer' } },
  [`${RECORDING_API}/peaks/route.ts`]: read('viewer'),
  [`${RECORDING_API}/poster/route.ts`]: { ...read('viewer'), PUT: { who: 'editor', body: { atMs: 0 } } },
  [`${RECORDING_API}/stills/[atMs]/route.ts`]: read('viewer'),
  // The lesson is named in the upload's metadata: what the member's role changes is tested with uploads.
  'api/uploads/[[...tus]]/route.ts': {
    POST: { who: 'signed-in' },
    PATCH: { who: 'signed-in' },
    HEAD: { who: 'signed-in' },
    DELETE: { who: 'signed-in' },
    OPTIONS: { who: 'signed-in' },
  },
};
