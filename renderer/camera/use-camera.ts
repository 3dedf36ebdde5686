/** The live picture of a camera: asked for, chosen among several, lit, and given free again. */
import { useCallback, useEffect, useState } from 'react';

export type CameraFault = 'denied' | 'none' | 'busy' | 'gone' | 'failed';

export type CameraState =
  | { readonly kind: 'starting' }
  | { readonly kind: 'live'; readonly stream: MediaStream }
  | { readonly kind: 'fault'; readonly fault: CameraFault };

export interface Camera {
  readonly state: CameraState;
  /** All that are connected, once one of them is live. */
  readonly cameras: readonly MediaDeviceInfo[];
  /** The one that is live. */
  readonly chosen: string | undefined;
  choose(deviceId: string): void;
  /** Absent where the camera has no light. */
  readonly light?: { readonly isOn: boolean; turn(isOn: boolean): void };
  retry(): void;
}

/** The light at the back of a tablet (W3C MediaStream Image Capture, `torch`), which the DOM types do not know. */
type WithTorch<Base> = Base & { readonly torch?: boolean };

/** The camera at the back of a tablet where there is one, in a size that shows a tag well. */
const wanted = (deviceId: string | undefined): MediaTrackConstraints => ({
  ...(deviceId === undefined ? { facingMode: { ideal: 'environment' } } : { deviceId: { exact: deviceId } }),
  width: { ideal: 1920 },
  height: { ideal: 1080 },
});

export const useCamera = (): Camera => {
  const [state, setState] = useState<CameraState>({ kind: 'starting' });
  const [cameras, setCameras] = useState<readonly MediaDeviceInfo[]>([]);
  const [wish, setWish] = useState<{ readonly deviceId?: string }>({});
  const [isLit, setLit] = useState(false);

  useEffect(() => {
    let isOver = false;
    let open: MediaStream | undefined;
    const start = async (): Promise<void> => {
      setState({ kind: 'starting' });
      setLit(false);
      const stream = await openCamera(wish.deviceId);
      if (typeof stream === 'string') return isOver ? undefined : setState({ kind: 'fault', fault: stream });
      if (isOver) return release(stream);
      open = stream;
      for (const track of stream.getVideoTracks())
        track.addEventListener('ended', () => setState({ kind: 'fault', fault: 'gone' }));
      setState({ kind: 'live', stream });
      const devices = await navigator.mediaDevices.enumerateDevices();
      if (!isOver) setCameras(devices.filter(({ kind }) => kind === 'videoinput'));
    };
    void start();
    return () => {
      isOver = true;
      if (open !== undefined) release(open);
    };
  }, [wish]);

  const track = state.kind === 'live' ? state.stream.getVideoTracks()[0] : undefined;
  const turn = useCallback(
    (isOn: boolean): void => {
      const light: WithTorch<MediaTrackConstraintSet> = { torch: isOn };
      void track?.applyConstraints({ advanced: [light] }).then(
        () => setLit(isOn),
        () => undefined,
      );
    },
    [track],
  );
  const capabilities: WithTorch<MediaTrackCapabilities> | undefined = track?.getCapabilities();
  return {
    state,
    cameras,
    chosen: track?.getSettings().deviceId,
    choose: (deviceId) => setWish({ deviceId }),
    retry: () => setWish({ ...wish }),
    ...(capabilities?.torch === true ? { light: { isOn: isLit, turn } } : {}),
  };
};

const release = (stream: MediaStream): void => {
  for (const track of stream.getTracks()) track.stop();
};

const openCamera = async (deviceId: string | undefined): Promise<MediaStream | CameraFault> => {
  try {
    return await navigator.mediaDevices.getUserMedia({ video: wanted(deviceId), audio: false });
  } catch (error) {
    return error instanceof DOMException ? (faults[error.name] ?? 'failed') : 'failed';
  }
};

/** What `getUserMedia` fails with (W3C Media Capture and Streams). */
const faults: Readonly<Record<string, CameraFault>> = {
  NotAllowedError: 'denied',
  SecurityError: 'denied',
  NotFoundError: 'none',
  OverconstrainedError: 'none',
  NotReadableError: 'busy',
  AbortError: 'busy',
};
