/** What a file is by its first bytes, whatever it is called; null for anything else. */
export type PhotoType = 'jpeg' | 'png' | 'webp' | 'heic';

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Brands of the HEVC image formats (ISO/IEC 23008-12, annex B). */
const HEIC_BRANDS = new Set(['heic', 'heix', 'hevc', 'hevx', 'heim', 'heis', 'mif1', 'msf1']);

/**
 * Reads the kind of picture off the signature: JPEG (ITU-T T.81, marker SOI), PNG (ISO/IEC 15948, 5.2), WebP (RFC 9649, 2.4),
 * HEIC (the file type box of ISO/IEC 14496-12).
 */
export function photoTypeOf(bytes: Uint8Array): PhotoType | null {
  const ascii = (start: number, end: number) => String.fromCharCode(...bytes.subarray(start, end));
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpeg';
  if (PNG.every((byte, i) => bytes[i] === byte)) return 'png';
  if (ascii(0, 4) === 'RIFF' && ascii(8, 12) === 'WEBP') return 'webp';
  if (ascii(4, 8) === 'ftyp' && HEIC_BRANDS.has(ascii(8, 12))) return 'heic';
  return null;
}
