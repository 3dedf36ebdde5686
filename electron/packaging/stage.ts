/** `npm run stage`: builds the product and lays out under `dist/app` what is packaged, for `electron-builder` to take from there. */
import { cp, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { buildIfStale, electronBundle, rendererBundle } from '../../src/host/build.ts';
import { productFolder } from '../../src/host/product-folder.ts';
import { packageSchema, stagedPackage } from './staged-package.ts';

const app = join(productFolder, 'dist', 'app');

await buildIfStale(rendererBundle, productFolder);
await buildIfStale(electronBundle, productFolder);
await rm(app, { recursive: true, force: true });
await mkdir(app, { recursive: true });
for (const part of ['dist/electron', 'dist/renderer', 'src', 'assets', 'demo-data', 'LICENSE'])
  await cp(join(productFolder, part), join(app, part), { recursive: true });
await rm(join(app, 'assets', 'pictures'), { recursive: true });

const product = packageSchema.parse(JSON.parse(await readFile(join(productFolder, 'package.json'), 'utf8')));
await writeFile(join(app, 'package.json'), `${JSON.stringify(stagedPackage(product), null, 2)}\n`);
