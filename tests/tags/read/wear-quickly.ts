/** Wear enough that general decoders fail, made in a moment: fading, dirty scratches, rubbed patches, a turn, blur and noise, seeded. */
import sharp, { type Sharp } from 'sharp';
import { isRefusal } from '../../../src/domain/refusal.ts';
import type { PrintableTag } from '../../../src/domain/tag-content.ts';
import type { Picture } from '../../../src/tags/read/picture.ts';
import { renderTagRaster } from '../../../src/tags/render-tag.ts';

/** mulberry32, so that every run has the same numbers. */
export const randomOf = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
};

export const greyOf = async (image: Sharp): Promise<Picture> => {
  const { data, info } = await image
    .flatten({ background: '#fff' })
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, luminance: Uint8Array.from(data) };
};

export const fresh = async (content: PrintableTag): Promise<Buffer> => {
  const tag = await renderTagRaster(content);
  if (isRefusal(tag)) throw new Error(tag.code);
  return Buffer.from(tag.png);
};

export const worn = async (content: PrintableTag, seed: number): Promise<Picture> =>
  greyOf(sharp(await wornFile(content, seed)));

/** As the bytes of a PNG. */
export const wornFile = async (content: PrintableTag, seed: number): Promise<Buffer> => {
  const random = randomOf(seed);
  const clean = await fresh(content);
  const { width = 0, height = 0 } = await sharp(clean).metadata();
  const between = (from: number, to: number): number => from + (to - from) * random();
  const scratches = Array.from({ length: 26 }, (_none, index) => {
    const [x, y] = [between(0, width), between(0, height)];
    const angle = (index % 2) * (Math.PI / 2) + between(-0.2, 0.2);
    const length = between(100, 500);
    const colour = index % 3 === 0 ? '#555' : '#fff';
    return `<path d="M${x},${y}l${length * Math.cos(angle)},${length * Math.sin(angle)}" stroke="${colour}" stroke-width="${between(2, 6)}"/>`;
  });
  const rubbed = Array.from({ length: 14 }, () => {
    const [x, y] = [between(0, width), between(0, height)];
    return `<ellipse cx="${x}" cy="${y}" rx="${between(10, 45)}" ry="${between(8, 30)}" fill="#fff" opacity="${between(0.5, 0.95)}"/>`;
  });
  const damage = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${[...scratches, ...rubbed].join('')}</svg>`;
  const scored = await sharp(clean)
    .composite([{ input: Buffer.from(damage), left: 0, top: 0 }])
    .png()
    .toBuffer();
  const turned = await sharp(scored)
    .linear(0.35, 110)
    .rotate(between(-12, 12), { background: '#333' })
    .extend({ top: 60, bottom: 60, left: 60, right: 60, background: '#333' })
    .blur(between(4.4, 5))
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  const noisy = turned.data.map((value) =>
    Math.max(0, Math.min(255, value + 12 * (random() + random() + random() - 1.5))),
  );
  return sharp(noisy, { raw: { width: turned.info.width, height: turned.info.height, channels: 1 } })
    .png()
    .toBuffer();
};
