/** A grey picture from the bytes of a picture file, in Node. */
import sharp from 'sharp';
import { type Refusal, refusal } from '../../domain/refusal.ts';
import type { Picture } from './picture.ts';

/** Far above any photograph of a tag; a file that claims more is refused before it takes the memory. */
const mostPixels = 100_000_000;

/** A tag that fills a tenth of so long a side still has more than one dot for each module. */
const longestSide = 4000;

/** Of a PNG, JPEG or WebP, upright as its camera held it, at most 4,000 dots long; a refusal where it is none. */
export const pictureFromFile = async (image: Uint8Array): Promise<Picture | Refusal> => {
  try {
    const file = sharp(image, { limitInputPixels: mostPixels, failOn: 'error' });
    const { format } = await file.metadata();
    if (!['png', 'jpeg', 'webp'].includes(format)) return refusal('image-unreadable');
    const { data, info } = await file
      .autoOrient()
      .flatten({ background: '#fff' })
      .resize({ width: longestSide, height: longestSide, fit: 'inside', withoutEnlargement: true })
      .toColourspace('b-w')
      .raw()
      .toBuffer({ resolveWithObject: true });
    return { width: info.width, height: info.height, luminance: Uint8Array.from(data) };
  } catch {
    return refusal('image-unreadable');
  }
};
