/** `npm run icons`: draws the icons of the product anew, those of the installers under `dist` and the one of the windows beside the drawing. */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { productFolder } from '../../src/host/product-folder.ts';
import { drawIcon, icnsOf, icnsTypes, icoDots, icoOf, linuxDots, windowDots } from './icon-files.ts';

const drawing = join(productFolder, 'assets', 'icon');
const packages = join(productFolder, 'dist', 'icons');

const svg = await readFile(join(drawing, 'srl-bench.svg'));
const draw = (dots: readonly number[]) => Promise.all(dots.map((each) => drawIcon(svg, each)));

await mkdir(join(packages, 'linux'), { recursive: true });
await writeFile(join(packages, 'srl-bench.ico'), icoOf(await draw(icoDots)));
await writeFile(join(packages, 'srl-bench.icns'), icnsOf(await draw([...new Set(Object.values(icnsTypes))])));
for (const { dots, png } of await draw(linuxDots))
  await writeFile(join(packages, 'linux', `${dots}x${dots}.png`), png);
await writeFile(join(drawing, `srl-bench-${windowDots}.png`), (await drawIcon(svg, windowDots)).png);
