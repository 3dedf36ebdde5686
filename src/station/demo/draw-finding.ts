/** Pictures of findings for the invented depot, drawn: no photograph of a real device is shipped. */
import sharp from 'sharp';
import { z } from 'zod';

export const drawnFindingSchema = z.enum(['broken-wires', 'crushing']);
export type DrawnFinding = z.infer<typeof drawnFindingSchema>;

const [width, height] = [960, 640];

/** A JPEG of the finding on a wire rope that lies across a bench. */
export const drawFinding = (finding: DrawnFinding): Promise<Buffer> =>
  sharp(Buffer.from(svgOf(finding)))
    .jpeg({ quality: 80 })
    .toBuffer();

const svgOf = (finding: DrawnFinding): string => `<svg xmlns="http://www.w3.org/2000/svg" width="${width}"
  height="${height}" viewBox="0 0 ${width} ${height}">
  <defs><linearGradient id="steel" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#50565a"/>
    <stop offset="0.4" stop-color="#c9ced1"/><stop offset="1" stop-color="#3c4144"/></linearGradient></defs>
  <rect width="${width}" height="${height}" fill="#8a7f6d"/>
  <g transform="rotate(-6 480 320)">
    <rect x="-60" y="250" width="1080" height="140" fill="url(#steel)"/>
    ${strands()}
    ${finding === 'crushing' ? crushed : broken}
  </g>
</svg>`;

/** The strands, laid to the right. */
const strands = (): string =>
  Array.from({ length: 24 }, (_, index) => {
    const x = index * 46 - 80;
    return `<path d="M${x} 390 C ${x + 30} 360 ${x + 40} 280 ${x + 70} 250" fill="none" stroke="#2b2f31" stroke-width="5"/>`;
  }).join('');

const crushed = `<path d="M380 262 Q480 236 590 262 L600 384 Q480 412 372 384 Z" fill="#e7ebed" opacity="0.85"/>
  <path d="M400 290 L580 280 M396 330 L584 326 M400 364 L578 366" stroke="#9aa1a5" stroke-width="8"/>`;

const broken = `<g fill="none" stroke="#dfe4e6" stroke-width="6" stroke-linecap="round">
  <path d="M430 262 C 440 220 420 190 400 170"/><path d="M452 258 C 480 214 500 200 530 196"/>
  <path d="M540 256 C 548 226 570 214 590 180"/></g>`;
