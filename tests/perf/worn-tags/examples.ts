/** Makes the pictures of DEVELOPERS.md: one tag at every level. `node --import tsx tests/perf/worn-tags/examples.ts [NUMBER]` */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { wearLevels } from './wear-amounts.ts';
import { pngOf, wornTag } from './worn-tag.ts';

const widthDots = 440;

const index = Number(process.argv[2] ?? 3);
for (const level of wearLevels) {
  const { picture } = await wornTag(index, level);
  const small = await sharp(await pngOf(picture))
    .resize({ width: widthDots })
    .png({ palette: true, colours: 32, compressionLevel: 9 })
    .toBuffer();
  const file = new URL(`../../../assets/pictures/worn-${level.toLowerCase()}.png`, import.meta.url);
  writeFileSync(fileURLToPath(file), small);
}
