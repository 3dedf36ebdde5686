/** PWG Raster read by an independent reader: the raster library of CUPS, inside the filter of cups-filters that makes a PDF of it. */
import { execFileSync } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { decodePDFRawStream, PDFDocument, PDFName, PDFNumber, PDFRawStream } from 'pdf-lib';
import { testFolder } from './debian-printers.ts';

export const rasterToPdf = '/usr/lib/cups/filter/rastertopdf';

export interface PwgDots {
  readonly width: number;
  readonly height: number;
  /** One sample for each dot and colour, 0 to 255. */
  readonly samples: Buffer;
}

export const dotsOfPwg = async (pwg: Uint8Array): Promise<PwgDots> => {
  const source = join(await testFolder(), 'page.pwg');
  await writeFile(source, pwg);
  const pdf = execFileSync(rasterToPdf, ['1', 'bench', 'page', '1', '', source], {
    env: { ...process.env, CONTENT_TYPE: 'application/vnd.cups-raster', OUTFORMAT: 'PDF' },
    stdio: ['ignore', 'pipe', 'ignore'],
    maxBuffer: 256 * 1024 * 1024,
  });
  const document = await PDFDocument.load(pdf);
  const [image] = document.context
    .enumerateIndirectObjects()
    .map(([, object]) => object)
    .filter(
      (object): object is PDFRawStream =>
        object instanceof PDFRawStream && object.dict.get(PDFName.of('Subtype')) === PDFName.of('Image'),
    );
  const number = (name: string) => image!.dict.lookup(PDFName.of(name), PDFNumber).asNumber();
  const [width, height] = [number('Width'), number('Height')];
  const packed = Buffer.from(decodePDFRawStream(image!).decode());
  if (number('BitsPerComponent') === 8) return { width, height, samples: packed };
  const bytesPerRow = Math.ceil(width / 8);
  const samples = Buffer.alloc(width * height);
  for (let at = 0; at < samples.length; at += 1) {
    const [x, y] = [at % width, Math.floor(at / width)];
    samples[at] = (packed[y * bytesPerRow + (x >> 3)]! >> (7 - (x & 7))) & 1 ? 255 : 0;
  }
  return { width, height, samples };
};
