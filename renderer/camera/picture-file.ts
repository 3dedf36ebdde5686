/** What a person may give as a picture, told from what cannot be read before anything is done with it. */

/** The station takes no more. */
export const mostMegabytes = 20;

/** Why a file is no picture for us; the key of its sentence. */
export type FileFault = 'empty' | 'too large' | 'heic' | 'no picture';

export const faultOf = async (file: Blob): Promise<FileFault | undefined> => {
  if (file.size === 0) return 'empty';
  const head = await headOf(file);
  if (head === undefined) return 'no picture';
  if (isHeic(head)) return 'heic';
  if (!isKnown(head)) return 'no picture';
  return file.size > mostMegabytes * 1_000_000 ? 'too large' : undefined;
};

/** A file that cannot be read, such as a folder, has none. */
const headOf = async (file: Blob): Promise<string | undefined> => {
  try {
    const bytes = new Uint8Array(await file.slice(0, 32).arrayBuffer());
    return String.fromCharCode(...bytes);
  } catch {
    return undefined;
  }
};

/** First bytes of PNG (ISO/IEC 15948), JPEG (ISO/IEC 10918-1) and WebP (RFC 9649); from memory. */
const isKnown = (head: string): boolean =>
  head.startsWith('\x89PNG\r\n\x1a\n') || head.startsWith('\xff\xd8\xff') || /^RIFF.{4}WEBP/s.test(head);

/** Brands of the `ftyp` box of HEIF and AVIF files (ISO/IEC 23008-12); from memory. */
const isHeic = (head: string): boolean => /^.{4}ftyp(?:hei[cxms]|hev[cxms]|mif1|msf1|avi[fs])/s.test(head);
