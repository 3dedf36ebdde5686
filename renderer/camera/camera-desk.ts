/** What the screens may ask of the camera of the window. */
import { createContext, useContext } from 'react';
import type { BenchId } from '../../src/domain/brand.ts';
import type { PictureSubject } from '../../src/domain/picture.ts';

/** A check of an open inspection. */
export interface PictureCheck {
  readonly inspection: number;
  readonly check: string;
  /** In the language of the window. */
  readonly title: string;
}

export interface CameraDesk {
  /** Opens the live picture, to read a tag or a code. */
  open(): void;
  /** Asks for a picture to keep with the record of the device: the one given, or one from the camera or a file. */
  keepPictureOf(benchId: BenchId, of: PictureSubject, picture?: Blob): void;
  /** Asks for a picture of what is seen at a check of an inspection. */
  keepPictureOfCheck(check: PictureCheck): void;
  /** The check to which a picture belongs that is pasted or dropped now; none where it is to be read. */
  aimAt(check: PictureCheck | undefined): void;
  /** The picture in which this device was read just now. */
  freshStillOf(benchId: BenchId): Blob | undefined;
  dismissStill(): void;
}

export const CameraDeskContext = createContext<CameraDesk>({
  open: () => undefined,
  keepPictureOf: () => undefined,
  keepPictureOfCheck: () => undefined,
  aimAt: () => undefined,
  freshStillOf: () => undefined,
  dismissStill: () => undefined,
});

export const useCameraDesk = (): CameraDesk => useContext(CameraDeskContext);
