/** What a site that wants to show a lesson in its own page is told: oEmbed 1.0 (oembed.com). */
import { escapeUTF8 } from 'entities';
import type { Revision } from './revision.ts';

/** The largest that the asker has room for, pixels; null where it did not say. */
export interface Room {
  readonly width: number | null;
  readonly height: number | null;
}

/** Absolute addresses. */
export interface EmbedPlaces {
  readonly site: string;
  readonly shelf: string;
  readonly embed: string;
  /** Null where there is no picture. */
  readonly poster: string | null;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

const USUAL_WIDTH = 640;
/** Of the line with the lesson's name below the player, pixels. */
export const FOOT_PX = 56;
/** Of a player without a picture, its foot included. */
const SOUND_PX = 160;
/** How long an asker may keep the answer: a correction should not wait for long. */
const CACHE_SECONDS = 3_600;

export function oEmbed(revision: Revision, places: EmbedPlaces, room: Room): Record<string, unknown> {
  const { recording, content, workshop } = revision;
  const { width, height } = playerSize(recording, room);
  const title = content.title.trim() || 'A lesson';
  const picture =
    recording?.width && recording.height ? { width: recording.width, height: recording.height } : null;
  return {
    version: '1.0',
    type: recording?.hasVideo ? 'video' : 'rich',
    title,
    author_name: workshop.name,
    author_url: places.shelf,
    provider_name: 'Benchleaf',
    provider_url: places.site,
    cache_age: CACHE_SECONDS,
    // A picture larger than the room must not be offered (section 2.3.4).
    ...(places.poster !== null && picture && fits(picture, room)
      ? {
          thumbnail_url: places.poster,
          thumbnail_width: picture.width,
          thumbnail_height: picture.height,
        }
      : {}),
    width,
    height,
    html:
      `<iframe src="${escapeUTF8(places.embed)}" width="${width}" height="${height}" ` +
      `title="${escapeUTF8(title)}" allow="fullscreen" loading="lazy"></iframe>`,
  };
}

const fits = (size: Size, room: Room): boolean =>
  size.width <= (room.width ?? Number.POSITIVE_INFINITY) &&
  size.height <= (room.height ?? Number.POSITIVE_INFINITY);

/** The picture in its own shape with the foot below it, within the room. */
function playerSize(recording: Revision['recording'], room: Room): Size {
  const most = { width: room.width ?? USUAL_WIDTH, height: room.height ?? Number.POSITIVE_INFINITY };
  if (!recording?.hasVideo || !recording.width || !recording.height)
    return { width: Math.min(USUAL_WIDTH, most.width), height: Math.min(SOUND_PX, most.height) };
  const shape = recording.width / recording.height;
  const tallest = Math.max(1, most.height - FOOT_PX);
  const width = Math.max(1, Math.floor(Math.min(most.width, tallest * shape)));
  return { width, height: Math.min(most.height, Math.round(width / shape) + FOOT_PX) };
}

/** A number of pixels as an address states it; null for anything else. */
export const roomOf = (text: string | null): number | null =>
  text !== null && /^[1-9]\d{0,4}$/.test(text) ? Number(text) : null;
