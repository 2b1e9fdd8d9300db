import sharp from 'sharp';

/** Where and by what an invented camera says that it was taken. */
export const CAMERA = {
  IFD0: { Make: 'Marrow Lane Workshops', Model: 'Zyzzyva 9', Artist: 'Zork Quillfeather', Copyright: 'Zork Quillfeather' },
  IFD2: { BodySerialNumber: 'ZQ-4471-9920', DateTimeOriginal: '2025:03:14 15:09:26', UserComment: 'at the kitchen table' },
  IFD3: {
    GPSLatitudeRef: 'N',
    GPSLatitude: '51/1 30/1 3230/100',
    GPSLongitudeRef: 'W',
    GPSLongitude: '0/1 7/1 3900/100',
    GPSMapDatum: 'ZORKDATUM-84',
  },
};

/** Every text of the camera's that must not be found in what is stored. */
export const TRACES = ['Zyzzyva', 'Quillfeather', 'ZQ-4471', '2025:03:14', 'kitchen', 'ZORKDATUM', 'Exif', 'EXIF', 'xpacket', 'http://ns.adobe.com'];

type Options = { width?: number; height?: number; orientation?: number; plain?: boolean };

/** A picture with a red left half and a blue right half, as a camera would write it unless it is `plain`. */
export async function makePhoto(format: 'jpeg' | 'png' | 'webp' | 'tiff' | 'gif', options: Options = {}): Promise<Uint8Array<ArrayBuffer>> {
  const { width = 2400, height = 1200, orientation, plain = false } = options;
  const half = { width: Math.ceil(width / 2), height, channels: 3, background: '#0000ff' } as const;
  const picture = sharp({ create: { width, height, channels: 3, background: '#ff0000' } })
    .composite([{ input: { create: half }, left: Math.floor(width / 2), top: 0 }])
    .toFormat(format);
  if (plain) return new Uint8Array(await picture.toBuffer());
  const exif = { ...CAMERA, IFD0: { ...CAMERA.IFD0 } };
  const written = await picture
    .withExif(exif)
    .withMetadata({ ...(orientation ? { orientation } : {}), exif })
    .withXmp('<?xpacket begin="" id="z"?><x:xmpmeta xmlns:x="adobe:ns:meta/"><a>Quillfeather</a></x:xmpmeta><?xpacket end="w"?>')
    .toBuffer();
  return new Uint8Array(written);
}
