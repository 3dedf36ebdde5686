/** A grey picture, row by row; 0 is black, 255 white. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly luminance: Uint8Array;
}
