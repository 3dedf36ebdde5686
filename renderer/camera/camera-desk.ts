/** What the screens may ask of the camera of the window. */
import { createContext, useContext } from 'react';
import type { BenchId } from '../../src/domain/brand.ts';

export interface CameraDesk {
  /** Opens the live picture, to read a tag or a code. */
  open(): void;
  /** The picture in which this device was read just now. */
  freshStillOf(benchId: BenchId): Blob | undefined;
  dismissStill(): void;
}

export const CameraDeskContext = createContext<CameraDesk>({
  open: () => undefined,
  freshStillOf: () => undefined,
  dismissStill: () => undefined,
});

export const useCameraDesk = (): CameraDesk => useContext(CameraDeskContext);
