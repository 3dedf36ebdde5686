/** The general decoders made ready in a Node process or thread, from the files of their packages. */
import { readDecoderBinary, readSecondDecoderBinary } from '../asset-files.ts';
import { prepareDecoders } from './general-decoders.ts';

let prepared = false;

/** Once in each thread; again does nothing. */
export const prepareDecodersInNode = (): void => {
  if (prepared) return;
  prepareDecoders({ zxing: readDecoderBinary(), zbar: readSecondDecoderBinary() });
  prepared = true;
};
