import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { encodePhoto, REFUSALS } from '../../../server/photos/encode-photo';
import { photoTypeOf } from '../../../server/photos/photo-type';
import { PHOTO_LIMITS } from '../../../shared/schemas/photo';
import { makePhoto, TRACES } from './make-photo';

const latin = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1');
const tracesIn = (bytes: Uint8Array) => TRACES.filter((trace) => latin(bytes).includes(trace));
/** Tag 0x8825 in either byte order: the pointer to the GPS directory (Exif 3.0, 4.6.3). */
const hasGps = (exif: Buffer) => exif.includes(Buffer.from([0x88, 0x25])) || exif.includes(Buffer.from([0x25, 0x88]));

/** Names of the chunks of a WebP file (RFC 9649, section 2.3). */
function chunksOf(bytes: Uint8Array): string[] {
  const file = Buffer.from(bytes);
  const names: string[] = [];
  for (let at = 12; at + 8 <= file.length; at += 8 + file.readUInt32LE(at + 4) + (file.readUInt32LE(at + 4) % 2)) {
    names.push(file.toString('latin1', at, at + 4));
  }
  return names;
}

async function encoded(bytes: Uint8Array) {
  const photo = await encodePhoto(bytes);
  if ('reason' in photo) throw new Error(photo.reason);
  return photo;
}

describe('encodePhoto', () => {
  it.each(['jpeg', 'png', 'webp'] as const)('carries nothing over from a %s but its pixels', async (format) => {
    const before = await makePhoto(format);
    expect(tracesIn(before)).toEqual(expect.arrayContaining(['Zyzzyva', 'Quillfeather', 'ZQ-4471', '2025:03:14', 'ZORKDATUM']));
    expect(hasGps((await sharp(before).metadata()).exif ?? Buffer.alloc(0))).toBe(true);
    const { large, small } = await encoded(before);
    for (const file of [large, small]) {
      expect(tracesIn(file)).toEqual([]);
      expect(chunksOf(file)).toEqual(['VP8 ']);
      const { exif, xmp, iptc, icc, orientation, format: kind } = await sharp(file).metadata();
      expect({ exif, xmp, iptc, icc, orientation, kind }).toEqual({ kind: 'webp' });
    }
  });

  it('fits the two sizes and never enlarges', async () => {
    const { large, small, width, height } = await encoded(await makePhoto('jpeg', { width: 2400, height: 1200 }));
    expect([width, height]).toEqual([1600, 800]);
    expect(await sharp(large).metadata()).toMatchObject({ width: 1600, height: 800 });
    expect(await sharp(small).metadata()).toMatchObject({ width: 480, height: 240 });
    expect(await encoded(await makePhoto('jpeg', { width: 60, height: 40 }))).toMatchObject({ width: 60, height: 40 });
  });

  it('stands a picture upright that a camera says is turned', async () => {
    // 6: the first row is the right side (Exif 3.0, 4.6.4, Orientation). The red left half ends up on top.
    const { large, width, height } = await encoded(await makePhoto('jpeg', { orientation: 6 }));
    expect([width, height]).toEqual([800, 1600]);
    const top = await sharp(large).extract({ left: 400, top: 100, width: 1, height: 1 }).raw().toBuffer();
    expect(top[0]).toBeGreaterThan(200);
    expect(top[2]).toBeLessThan(60);
  });

  it('goes by the content and not by a name', async () => {
    expect(photoTypeOf(await makePhoto('png', { width: 8, height: 8 }))).toBe('png');
    for (const format of ['tiff', 'gif'] as const) {
      expect(await encodePhoto(await makePhoto(format, { width: 8, height: 8, plain: true }))).toEqual({ reason: REFUSALS.type });
    }
    const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>');
    expect(await encodePhoto(svg)).toEqual({ reason: REFUSALS.type });
    expect(await encodePhoto(new Uint8Array())).toEqual({ reason: REFUSALS.type });
    // The beginning of a JPEG does not make one.
    expect(await encodePhoto(Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), svg]))).toEqual({ reason: REFUSALS.broken });
  });

  it('says what to do with a HEIC photo', async () => {
    const heic = Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1');
    expect(await encodePhoto(heic)).toEqual({ reason: REFUSALS.heic });
  });

  it('refuses a file cut short', async () => {
    const whole = await makePhoto('png', { plain: true });
    expect(await encodePhoto(whole.subarray(0, whole.length / 2))).toEqual({ reason: REFUSALS.broken });
  });

  it('refuses a small file that unfolds into too many pixels, and one of too many bytes', async () => {
    const bomb = hugePng(20_000, 20_000);
    expect(bomb.length).toBeLessThan(1_000_000);
    expect(await encodePhoto(bomb)).toEqual({ reason: REFUSALS.pixels });
    expect(await encodePhoto(new Uint8Array(PHOTO_LIMITS.bytes + 1))).toEqual({ reason: REFUSALS.bytes });
  });
});

/** A black grey-scale PNG of any size, written by hand (ISO/IEC 15948): a well-packed one is tiny. */
function hugePng(width: number, height: number): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 1;
  const rows = deflateSync(Buffer.alloc((Math.ceil(width / 8) + 1) * height), { level: 9 });
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([signature, chunk('IHDR', head), chunk('IDAT', rows), chunk('IEND', Buffer.alloc(0))]);
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  body.copy(framed, 4);
  framed.writeUInt32BE(crc(body), body.length + 4);
  return framed;
}

/** CRC-32 as PNG uses it (ISO/IEC 15948, annex D). */
function crc(bytes: Buffer): number {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return (value ^ 0xffffffff) >>> 0;
}
