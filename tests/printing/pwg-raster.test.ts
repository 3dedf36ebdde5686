import { execFileSync } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type IppSettings, ippSettingsSchema } from '../../src/printing/destination-settings.ts';
import { type PwgRasterType, pwgRaster } from '../../src/printing/ipp/pwg-raster.ts';
import { type Raster, rasterOf } from '../../src/printing/raster.ts';
import { requireTool } from '../support/debian-tools.ts';
import { testFolder } from './debian-printers.ts';
import { dotsOfPwg, rasterToPdf } from './read-pwg.ts';
import { dotsJob, stock } from './sample-job.ts';

const settings: IppSettings = ippSettingsSchema.parse({ kind: 'ipp', name: 'Desk', stock, address: 'x' });

const expectRaster = async (job: Parameters<typeof rasterOf>[0], colour: boolean): Promise<Raster> => {
  const raster = await rasterOf(job, settings, colour);
  if ('refused' in raster) throw new Error(raster.code);
  return raster;
};

describe('PWG Raster', () => {
  test('the header stands where the standard puts its fields', async () => {
    const job = await dotsJob(300);
    const file = Buffer.from(
      pwgRaster({ raster: await expectRaster(job, false), type: 'sgray_8', dpi: 300, ...stock }),
    );
    expect(file.subarray(0, 4).toString()).toBe('RaS2');
    const header = file.subarray(4, 4 + 1_796);
    const field = (offset: number) => header.readUInt32BE(offset);
    // Offsets: PWG 5102.4-2012 §4.3, Table 1.
    expect(header.toString('latin1', 0, 10)).toBe('PwgRaster\0');
    expect([field(276), field(280)]).toEqual([300, 300]);
    // 100 mm = 283.46 pt, 50 mm = 141.73 pt.
    expect([field(352), field(356)]).toEqual([283, 142]);
    // 100 mm × 300 / 25.4 = 1181.1 dots, 50 mm × 300 / 25.4 = 590.6 dots.
    expect([field(372), field(376)]).toEqual([1_181, 591]);
    expect([field(384), field(388), field(392)]).toEqual([8, 8, 1_181]);
    // sGray is 18 (Table 3), one colour, one page.
    expect([field(400), field(420), field(452)]).toEqual([18, 1, 1]);
  });

  const types: [PwgRasterType, boolean][] = [
    ['black_1', false],
    ['sgray_8', false],
    ['srgb_8', true],
  ];

  describe.runIf(requireTool(rasterToPdf))('read by the CUPS raster library', () => {
    test.each(types)('%s holds every dot of the picture', async (type, colour) => {
      const job = await dotsJob(203);
      const raster = await expectRaster(job, colour);
      const read = await dotsOfPwg(pwgRaster({ raster, type, dpi: 203, ...stock }));
      expect([read.width, read.height]).toEqual([raster.widthDots, raster.heightDots]);
      const expected = colour ? [...job.dots].flatMap((dot) => [dot, dot, dot]) : job.dots;
      expect(Buffer.compare(read.samples, Buffer.from(expected))).toBe(0);
    });

    test('greys come through as they are', async () => {
      // 256 greys in one line, each line moved by one dot, so that no line repeats.
      const [width, height] = [256, 40];
      const samples = Uint8Array.from(
        { length: width * height },
        (_, at) => ((at % width) + Math.floor(at / width)) % 256,
      );
      const page = { dpi: 300, widthMm: (width * 25.4) / 300, heightMm: (height * 25.4) / 300 };
      const raster: Raster = { widthDots: width, heightDots: height, channels: 1, samples };
      const read = await dotsOfPwg(pwgRaster({ raster, type: 'sgray_8', ...page }));
      expect(Buffer.compare(read.samples, samples)).toBe(0);
    });
  });

  test.runIf(requireTool('ippevepcl'))('the reader of an IPP Everywhere printer takes the file', async () => {
    const job = await dotsJob(300);
    const file = join(await testFolder(), 'page.pwg');
    await writeFile(
      file,
      pwgRaster({ raster: await expectRaster(job, false), type: 'black_1', dpi: 300, ...stock }),
    );
    const output = execFileSync('ippevepcl', [file], {
      env: { ...process.env, CONTENT_TYPE: 'image/pwg-raster' },
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    // A row of PCL graphics is `ESC * b # W`; the page has ink on 591 − 48 rows, some of them blank by chance.
    expect(output.toString('latin1').match(/\*b\d+W/g)!.length).toBeGreaterThan(400);
  });
});
