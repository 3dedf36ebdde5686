/** Recordings of our own tags as a fake camera plays them: YUV4MPEG2, made from the rasters that a printer gets. */
import { open } from 'node:fs/promises';
import sharp from 'sharp';

export interface Pose {
  /** Width of the tag in the frame, in dots. */
  readonly widthDots: number;
  /** Turned in the plane of the picture, in degrees. */
  readonly turned: number;
  /** How far its height is sheared to one side, as a share: a tag that is seen askew. */
  readonly tilt: number;
  /** Standard deviation of the blur, in dots; 0.3 is sharp. */
  readonly blur: number;
  /** Of the middle of the tag from the middle of the frame, in dots. */
  readonly right: number;
  readonly down: number;
}

export const frameWidth = 1280;
export const frameHeight = 720;

const bench = '#5d5f62';

/** One frame, grey, row by row. */
export const frameOf = async (tag: Uint8Array, pose: Pose): Promise<Buffer> => {
  const seen = await sharp(await sharp(tag).resize(pose.widthDots).flatten({ background: '#fff' }).toBuffer())
    .affine([1, pose.tilt, 0, 1], { background: bench })
    .toBuffer();
  const turned = await sharp(seen).rotate(pose.turned, { background: bench }).png().toBuffer();
  const { width, height } = await sharp(turned).metadata();
  const left = Math.round((frameWidth - width) / 2 + pose.right);
  const top = Math.round((frameHeight - height) / 2 + pose.down);
  const placed = await sharp({
    create: { width: frameWidth, height: frameHeight, channels: 3, background: bench },
  })
    .composite([{ input: turned, left, top }])
    .png()
    .toBuffer();
  return sharp(placed).blur(pose.blur).greyscale().raw().toBuffer();
};

/** Carried past the camera and turned on the way, a moment out of focus: 24 frames. */
export const movingPast = (tag: Uint8Array): Promise<readonly Buffer[]> =>
  Promise.all(
    Array.from({ length: 24 }, (_, frame) => {
      const phase = (2 * Math.PI * frame) / 24;
      return frameOf(tag, {
        widthDots: 640 + Math.round(60 * Math.sin(phase)),
        turned: 14 * Math.sin(phase),
        tilt: 0.12 * Math.cos(phase),
        blur: Math.max(0.3, 3 * Math.sin(phase / 2) - 0.5),
        right: Math.round(180 * Math.cos(phase)),
        down: Math.round(60 * Math.sin(phase)),
      });
    }),
  );

/**
 * So worn that no general decoder reads it: every symbol is scratched across at an angle, faded and out of focus, and the
 * matrix symbols are rubbed away.
 */
export const worn = async (tag: Uint8Array): Promise<Uint8Array> => {
  const { width, height } = await sharp(tag).metadata();
  const scratches = Array.from({ length: 8 }, (_, each) => {
    const [from, to] = [((each + 0.5) / 8) * height, ((each + 0.9) / 8) * height];
    return `<line x1="0" y1="${from}" x2="${width}" y2="${to}" stroke="#ddd" stroke-width="${height * 0.018}"/>`;
  });
  const wear = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${scratches.join('')}</svg>`;
  const scratched = await sharp(tag)
    .flatten({ background: '#fff' })
    .composite([{ input: Buffer.from(wear) }])
    .png()
    .toBuffer();
  return sharp(scratched).linear(0.6, 60).png().toBuffer();
};

export const heldStill = async (tag: Uint8Array, blur: number): Promise<readonly Buffer[]> => [
  await frameOf(tag, { widthDots: 1200, turned: 0, tilt: 0, blur, right: 0, down: 0 }),
];

/** Frames without colour at 10 a second, as Chromium takes them for a camera that plays them over and over. */
export const writeRecording = async (path: string, frames: readonly Uint8Array[]): Promise<void> => {
  const file = await open(path, 'w');
  try {
    await file.write(`YUV4MPEG2 W${frameWidth} H${frameHeight} F10:1 Ip A1:1 C420jpeg\n`);
    const colour = Buffer.alloc((frameWidth * frameHeight) / 2, 128);
    for (const frame of frames) {
      await file.write('FRAME\n');
      await file.write(frame);
      await file.write(colour);
    }
  } finally {
    await file.close();
  }
};
