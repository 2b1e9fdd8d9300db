import type { Sharp } from 'sharp';
import { PHOTO_LIMITS, PHOTO_SIZES } from '../../shared/schemas/photo';
import { photoTypeOf } from './photo-type';

/** A photo drawn anew in its two sizes, both WebP; `width` and `height` are of the larger one. */
export type EncodedPhoto = { large: Uint8Array; small: Uint8Array; width: number; height: number };

export const REFUSALS = {
  bytes: `This file is larger than ${PHOTO_LIMITS.bytes / 1_000_000} MB. Save a smaller copy of it, and add that.`,
  pixels: `This picture has more than ${PHOTO_LIMITS.pixels / 1_000_000} million pixels. Save a smaller copy of it, and add that.`,
  heic: 'This is a HEIC photo, which cannot be read here. Save or share it as JPEG, and add that.',
  type: 'This is no JPEG, PNG or WebP picture, whatever it is called. Save it as JPEG, and add that.',
  broken: 'This picture cannot be read: the file is damaged or cut short. Save it anew as JPEG, and add that.',
} as const;

/** Longest that one picture may take to be drawn, in seconds. */
const SECONDS = 30;

/**
 * Reads a picture and draws it anew, upright, in two sizes. Only its pixels are carried over: what a camera wrote into the
 * file (place, time, serial numbers, thumbnails, names) is not. An animation gives its first picture; what is see-through
 * becomes white.
 *
 * @param bytes the file as it came.
 * @returns the two files, or what to do instead as a sentence.
 */
export async function encodePhoto(bytes: Uint8Array): Promise<EncodedPhoto | { reason: string }> {
  if (bytes.length > PHOTO_LIMITS.bytes) return { reason: REFUSALS.bytes };
  const type = photoTypeOf(bytes);
  if (type === 'heic') return { reason: REFUSALS.heic };
  if (type === null) return { reason: REFUSALS.type };
  const sharp = await loadSharp();
  try {
    const source = sharp(bytes, { limitInputPixels: PHOTO_LIMITS.pixels, failOn: 'error' }).timeout({ seconds: SECONDS });
    const { format, width, height } = await source.metadata();
    if (format !== type) return { reason: REFUSALS.type };
    if (width * height > PHOTO_LIMITS.pixels) return { reason: REFUSALS.pixels };
    const large = await draw(source, PHOTO_SIZES.large, 80);
    const small = await draw(source, PHOTO_SIZES.small, 74);
    return { large: large.data, small: small.data, width: large.info.width, height: large.info.height };
  } catch (error) {
    // sharp says what is wrong with a file in words only.
    const isTooLarge = error instanceof Error && error.message.includes('pixel limit');
    return { reason: isTooLarge ? REFUSALS.pixels : REFUSALS.broken };
  }
}

function draw(source: Sharp, longest: number, quality: number) {
  const size = { width: longest, height: longest, fit: 'inside', withoutEnlargement: true } as const;
  // Without a word about metadata sharp writes none; colours are turned into sRGB first.
  return source.clone().autoOrient().resize(size).flatten({ background: '#fff' }).webp({ quality }).toBuffer({ resolveWithObject: true });
}

let loaded: Promise<(typeof import('sharp'))['default']> | null = null;

/** Loaded by the first photo: where its binding is missing, everything but photos still works. */
function loadSharp() {
  loaded ??= import('sharp').then((module) => {
    const sharp = module.default;
    // Nothing but the three kinds is ever decoded, whatever the library could read.
    sharp.block({ operation: ['VipsForeignLoad'] });
    sharp.unblock({ operation: ['VipsForeignLoadJpegBuffer', 'VipsForeignLoadPngBuffer', 'VipsForeignLoadWebpBuffer'] });
    sharp.cache(false);
    return sharp;
  });
  return loaded;
}
