/**
 * The poster as the player of a page shows it: a picture that a telephone on a
 * slow line has before it has anything else. Drawn with Skia by the worker; the
 * same poster gives the same bytes.
 */

/** Twice the width of a telephone's page in CSS pixels, px. */
const MOST_WIDE = 800;
/** An upright recording is shown no higher than a screen, px. */
const MOST_HIGH = 960;
/**
 * Of 100, best first; the last is taken where none is light. Looked at on a
 * frame of the demo lesson at the size of a telephone: no rims at wires, the
 * same letters.
 */
const QUALITIES = [68, 52, 35] as const;
/** Bytes: it comes inside the page, and holds up what stands behind it for 60 ms at 1.6 Mbit/s. */
export const LIGHT_POSTER = 12_000;

/** WebP (RFC 9649), in pixels no larger than the poster itself. @param poster JPEG */
export async function drawPoster(poster: Uint8Array): Promise<Uint8Array> {
  // Loaded when the first is drawn: it brings a drawing engine of 30 MB.
  const { createCanvas, loadImage } = await import('@napi-rs/canvas');
  const image = await loadImage(poster);
  const scale = Math.min(1, MOST_WIDE / image.width, MOST_HIGH / image.height);
  const canvas = createCanvas(Math.round(image.width * scale), Math.round(image.height * scale));
  const context = canvas.getContext('2d');
  context.imageSmoothingQuality = 'high';
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  // At once and not in a thread of its own, as the card is.
  let drawn: Uint8Array = new Uint8Array();
  for (const quality of QUALITIES) {
    drawn = canvas.toBuffer('image/webp', quality);
    if (drawn.length <= LIGHT_POSTER) break;
  }
  return drawn;
}
