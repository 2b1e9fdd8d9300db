/** What a photo is held to; the page and the procedures share it. */
export const PHOTO_LIMITS = {
  /** Photos of one case. */
  count: 6,
  /** Bytes of a file as it is sent. */
  bytes: 15_000_000,
  /** Pixels of a picture as it is sent: a small file can unfold into more than a machine holds. */
  pixels: 64_000_000,
  /** Characters of the words for those who cannot see it. */
  alt: 300,
} as const;

/** Longest sides of the two kept files, in pixels. */
export const PHOTO_SIZES = { large: 1600, small: 480 } as const;
export type PhotoSize = keyof typeof PHOTO_SIZES;

/** The kinds of file that are taken, as a file chooser wants them. */
export const PHOTO_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const;

/** A photo as a page shows it; `width` and `height` are of the larger file. */
export type PhotoView = { id: string; alt: string; width: number; height: number };

/** What came of adding a photo; `reason` says what to do. */
export type PhotoOutcome = { kind: 'added'; id: string } | { kind: 'refused'; reason: string };

/** Where a photo stands on this site. */
export const photoAddress = (id: string, size: PhotoSize): string => `/api/photos/${id}/${size}`;
