/** A picture as it is kept, and as it is shown small. */
import type { PictureFile } from '../domain/picture.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';

/** Far above any photograph; a file that claims more is refused before it takes the memory. */
const mostPixels = 100_000_000;
const mostSideDots = 4096;
const thumbnailDots = 320;

export interface StillPicture extends Pick<PictureFile, 'mediaType' | 'width' | 'height'> {
  readonly bytes: Uint8Array;
}

/**
 * From the bytes of a PNG, JPEG or WebP file: upright, no side longer than 4,096 dots, and without anything that the file
 * says besides the picture, such as the place where it was taken. Refuses with `image-unreadable`.
 */
export const stillPictureOf = async (image: Uint8Array): Promise<StillPicture | Refusal> => {
  try {
    const { default: sharp } = await import('sharp');
    const { format } = await sharp(image, { limitInputPixels: mostPixels }).metadata();
    if (!['png', 'jpeg', 'webp'].includes(format)) return refusal('image-unreadable', {}, 'picture');
    const { data, info } = await sharp(image, { limitInputPixels: mostPixels, failOn: 'error' })
      .autoOrient()
      .flatten({ background: '#fff' })
      .resize({ width: mostSideDots, height: mostSideDots, fit: 'inside', withoutEnlargement: true })
      .toColourspace('srgb')
      .jpeg({ quality: 90 })
      .toBuffer({ resolveWithObject: true });
    return { bytes: data, mediaType: 'image/jpeg', width: info.width, height: info.height };
  } catch {
    return refusal('image-unreadable', {}, 'picture');
  }
};

/** A JPEG that fits a square of 320 dots, of a picture that is kept. */
export const thumbnailOf = async (picture: Uint8Array): Promise<Buffer> => {
  const { default: sharp } = await import('sharp');
  return sharp(picture)
    .resize({ width: thumbnailDots, height: thumbnailDots, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 75 })
    .toBuffer();
};
