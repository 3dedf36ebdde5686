/** `npm run stage`: builds the product and lays out under `dist/app` what is packaged, for `electron-builder` to take from there. */
import { cp, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { buildIfStale, electronBundle, rendererBundle } from '../../src/host/build.ts';
import { productFolder } from '../../src/host/product-folder.ts';
import { packageSchema, stagedPackage } from './staged-package.ts';

const app = join(productFolder, 'dist', 'app');
const bundle = join(productFolder, 'dist', 'electron');

await buildIfStale(rendererBundle, productFolder);
await buildIfStale(electronBundle, productFolder);
await rm(app, { recursive: true, force: true });
await mkdir(app, { recursive: true });
for (const part of ['dist/electron', 'dist/renderer', 'assets', 'demo-data', 'LICENSE'])
  await cp(join(productFolder, part), join(app, part), { recursive: true });
await rm(join(app, 'assets', 'pictures'), { recursive: true });

const names = (await readdir(bundle)).filter((name) => /\.c?js$/.test(name));
const scripts = await Promise.all(names.map((name) => readFile(join(bundle, name), 'utf8')));
const product = packageSchema.parse(JSON.parse(await readFile(join(productFolder, 'package.json'), 'utf8')));
await writeFile(join(app, 'package.json'), `${JSON.stringify(stagedPackage(product, scripts), null, 2)}\n`);
