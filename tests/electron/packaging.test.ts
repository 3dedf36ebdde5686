/** What is packaged, read back: the icons decoded, the fuses against the names of their publisher, the packages against those of the product. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import configuration from '../../electron/packaging/electron-builder.json' with { type: 'json' };
import {
  drawIcon,
  icnsOf,
  icnsTypes,
  icoDots,
  icoOf,
  windowDots,
} from '../../electron/packaging/icon-files.ts';
import { packageSchema, stagedPackage } from '../../electron/packaging/staged-package.ts';
import { productFolder } from '../../src/host/product-folder.ts';

const iconFolder = join(productFolder, 'assets', 'icon');
const svg = await readFile(join(iconFolder, 'srl-bench.svg'));

/** How far two pictures are from one another, in steps of 255, on average over every channel. */
const distance = async (one: Buffer, other: Buffer, dots: number): Promise<number> => {
  const raw = (png: Buffer) => sharp(png).resize(dots, dots).ensureAlpha().raw().toBuffer();
  const [a, b] = await Promise.all([raw(one), raw(other)]);
  return a.reduce((sum, value, index) => sum + Math.abs(value - (b[index] ?? 0)), 0) / a.length;
};

describe('the icon', () => {
  test('is drawn in every size as itself: filled to its round corners, which are clear', async () => {
    for (const dots of [16, 48, 256, 1024]) {
      const { png } = await drawIcon(svg, dots);
      expect(await sharp(png).metadata()).toMatchObject({
        width: dots,
        height: dots,
        format: 'png',
        hasAlpha: true,
      });
      const raw = await sharp(png).ensureAlpha().raw().toBuffer();
      const alphaAt = (x: number, y: number): number | undefined => raw[(y * dots + x) * 4 + 3];
      expect(alphaAt(0, 0)).toBe(0);
      expect(alphaAt(Math.floor(dots / 2), Math.floor(dots * 0.9))).toBe(255);
    }
  });

  test('of the windows is the one that is drawn', async () => {
    const kept = await readFile(join(iconFolder, `srl-bench-${windowDots}.png`));
    expect(await sharp(kept).metadata()).toMatchObject({ width: 256, height: 256 });
    const { png } = await drawIcon(svg, windowDots);
    expect(await distance(kept, png, windowDots)).toBeLessThan(2);
  });

  /** Offsets and meanings: ICONDIR and ICONDIRENTRY of the Win32 documentation. */
  test('for Windows is a directory whose every entry is the picture of its size', async () => {
    const pictures = await Promise.all(icoDots.map((dots) => drawIcon(svg, dots)));
    const ico = icoOf(pictures);
    expect([ico.readUInt16LE(0), ico.readUInt16LE(2), ico.readUInt16LE(4)]).toEqual([0, 1, icoDots.length]);
    let end = 6 + 16 * icoDots.length;
    for (const [index, dots] of icoDots.entries()) {
      const entry = 6 + 16 * index;
      expect([ico[entry], ico[entry + 1]]).toEqual(dots === 256 ? [0, 0] : [dots, dots]);
      expect(ico.readUInt16LE(entry + 6)).toBe(32);
      const [length, offset] = [ico.readUInt32LE(entry + 8), ico.readUInt32LE(entry + 12)];
      expect(offset).toBe(end);
      end = offset + length;
      const png = ico.subarray(offset, end);
      expect(await sharp(png).metadata()).toMatchObject({ width: dots, height: dots, format: 'png' });
    }
    expect(end).toBe(ico.length);
  });

  /** Types and their dots: `IconStorage.h` of Apple, as the public descriptions of the format give them. */
  test('for a Mac is a list whose every element is the picture that its type says', async () => {
    const dotsOf: Readonly<Record<string, number>> = {
      icp4: 16,
      icp5: 32,
      ic07: 128,
      ic08: 256,
      ic09: 512,
      ic10: 1024,
      ic11: 32,
      ic12: 64,
      ic13: 256,
      ic14: 512,
    };
    const sizes = [...new Set(Object.values(icnsTypes))];
    const icns = icnsOf(await Promise.all(sizes.map((dots) => drawIcon(svg, dots))));
    expect(icns.toString('latin1', 0, 4)).toBe('icns');
    expect(icns.readUInt32BE(4)).toBe(icns.length);
    const types: string[] = [];
    for (let at = 8; at < icns.length; at += icns.readUInt32BE(at + 4)) {
      const type = icns.toString('latin1', at, at + 4);
      types.push(type);
      const png = icns.subarray(at + 8, at + icns.readUInt32BE(at + 4));
      expect(await sharp(png).metadata(), type).toMatchObject({ width: dotsOf[type], format: 'png' });
    }
    expect(types.sort()).toEqual(Object.keys(dotsOf).sort());
  });
});

describe('the packages', () => {
  /** Names: `FuseV1Options` of `@electron/fuses`, as the schema of electron-builder 26.17 spells them. */
  test('have every fuse set that lets nobody run other code in the program or read its cookies', () => {
    expect(configuration.electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    });
    expect(configuration.asar).toBe(true);
  });

  test('are for Windows, macOS and Linux, each with our icon', () => {
    expect(configuration.win.icon).toBe('dist/icons/srl-bench.ico');
    expect(configuration.mac.icon).toBe('dist/icons/srl-bench.icns');
    expect(configuration.linux.icon).toBe('dist/icons/linux');
  });

  test('hold every package of the product but those that only build it', async () => {
    const product = packageSchema.parse(
      JSON.parse(await readFile(join(productFolder, 'package.json'), 'utf8')),
    );
    const staged = stagedPackage(product);
    expect(staged).toMatchObject({ version: product.version, main: 'dist/electron/main.js', type: 'module' });
    const names = Object.keys(product.dependencies);
    const left = names.filter((name) => !(name in staged.dependencies));
    expect(left.sort()).toEqual(['@vitejs/plugin-react', 'electron', 'typescript', 'vite']);
    for (const needed of ['sqlite3', 'sharp', 'tsx', 'highs'])
      expect(staged.dependencies[needed], needed).toBe(product.dependencies[needed]);
  });
});
