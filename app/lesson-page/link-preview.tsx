import type { Revision } from '#lib/lesson/revision.ts';

export interface LinkPicture {
  /** Absolute. */
  readonly address: string;
  readonly type: string;
  /** Pixels, where they are known. */
  readonly width: number | null;
  readonly height: number | null;
  /** What it shows, in words. */
  readonly text: string;
}

interface LinkPreviewProps {
  readonly revision: Revision;
  /** Absolute addresses. */
  readonly page: string;
  /** Of the page, which says where a revision is an earlier one. */
  readonly title: string;
  readonly picture: LinkPicture | null;
  readonly recording: string | null;
}

/** What a message or a page that links here may show (the Open Graph protocol, ogp.me); React puts it into the head. */
export const LinkPreview = ({ revision, page, title, picture, recording }: LinkPreviewProps) => {
  const { content, workshop } = revision;
  const told: readonly (readonly [string, string | number | null | undefined])[] = [
    ['og:type', 'article'],
    ['og:title', title],
    ['og:description', content.summary.trim().slice(0, 300)],
    ['og:url', page],
    ['og:site_name', workshop.name],
    ['og:locale', localeOf(content.language)],
    ['og:image', picture?.address],
    ['og:image:type', picture?.type],
    ['og:image:width', picture?.width],
    ['og:image:height', picture?.height],
    ['og:image:alt', picture?.text],
    [revision.recording?.hasVideo ? 'og:video' : 'og:audio', recording],
    [
      revision.recording?.hasVideo ? 'og:video:type' : 'og:audio:type',
      recording && revision.recording?.mediaType,
    ],
    ['article:modified_time', revision.publishedAt],
  ];
  return told.map(([property, content]) =>
    content ? <meta key={property} property={property} content={String(content)} /> : null,
  );
};

/** `en_GB`, as the protocol writes it; null where the tag names no region. */
function localeOf(tag: string): string | null {
  const match = /^([a-z]{2,3})-([A-Z]{2})$/.exec(tag);
  return match ? `${match[1]}_${match[2]}` : null;
}
