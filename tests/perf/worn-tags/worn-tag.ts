/** Pictures of worn tags of the fleet, each by its number. */
import sharp from 'sharp';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { PrintableTag } from '../../../src/domain/tag-content.ts';
import type { Picture } from '../../../src/tags/read/picture.ts';
import { renderTagRaster } from '../../../src/tags/render-tag.ts';
import { fleet, statusTagOf } from './fleet.ts';
import { jpegQualityOf, wear } from './wear.ts';
import type { WearLevel } from './wear-amounts.ts';

export interface WornTag {
  readonly picture: Picture;
  readonly benchId: BenchId;
}

/** The first number of the benchmark's pictures; readers are tuned on lower ones only. */
export const firstBenchmarkIndex = 1_000_000;

/** The status tag of 100×50 mm of device `index` modulo the fleet, worn and photographed with `index` as seed. */
export const wornTag = async (index: number, level: WearLevel): Promise<WornTag> => {
  const benchId = deviceOf(index);
  const clean = await cleanPicture(statusTagOf(benchId));
  return { benchId, picture: await photographed(clean, level, index) };
};

/** The ID label of 50×25 mm of the same device. */
export const wornIdLabel = async (index: number, level: WearLevel): Promise<WornTag> => {
  const benchId = deviceOf(index);
  const clean = await cleanPicture({ kind: 'id', benchId });
  return { benchId, picture: await photographed(clean, level, index) };
};

const deviceOf = (index: number): BenchId => fleet[index % fleet.length] as BenchId;

/** Worn, and stored once as JPEG as a camera does. */
export const photographed = async (clean: Picture, level: WearLevel, seed: number): Promise<Picture> =>
  throughJpeg(wear(clean, level, seed), jpegQualityOf(level, seed));

/** At 300 dots per inch, as a printer prints it. */
export const cleanPicture = async (content: PrintableTag): Promise<Picture> => {
  const raster = await renderTagRaster(content, { dpi: 300, ink: 'monochrome' });
  if ('refused' in raster) throw new Error(`No tag for the benchmark: ${raster.code}`);
  return greyPicture(raster.png);
};

const throughJpeg = async ({ width, height, luminance }: Picture, quality: number): Promise<Picture> =>
  greyPicture(
    await sharp(luminance, { raw: { width, height, channels: 1 } })
      .jpeg({ quality })
      .toBuffer(),
  );

/** From the bytes of any picture file. */
export const greyPicture = async (image: Uint8Array): Promise<Picture> => {
  const { data, info } = await sharp(image)
    .flatten({ background: '#fff' })
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, luminance: Uint8Array.from(data) };
};

/** As a PNG file, to be looked at. */
export const pngOf = ({ width, height, luminance }: Picture): Promise<Buffer> =>
  sharp(luminance, { raw: { width, height, channels: 1 } })
    .png()
    .toBuffer();
