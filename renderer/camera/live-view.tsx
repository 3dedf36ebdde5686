/** The live picture of a camera, or why there is none, with the choice among cameras and its light. */
import { type ReactNode, type RefObject, useEffect } from 'react';
import { AlertLine } from '../components/alert-line.tsx';
import { Button } from '../components/button.tsx';
import { CheckBox } from '../components/check-box.tsx';
import { SelectInput } from '../components/select-input.tsx';
import { useText } from '../i18n/text.ts';
import styles from './camera.module.css';
import type { Camera } from './use-camera.ts';

export interface LiveViewProps {
  readonly camera: Camera;
  /** Is given the element in which it plays. */
  readonly video: RefObject<HTMLVideoElement | null>;
  /** Further buttons under the picture. */
  readonly children: ReactNode;
}

export const LiveView = ({ camera, video, children }: LiveViewProps) => {
  const { t } = useText();
  const { state } = camera;
  useEffect(() => {
    if (video.current !== null) video.current.srcObject = state.kind === 'live' ? state.stream : null;
  }, [state, video]);
  return (
    <>
      <div className={state.kind === 'fault' ? styles.hidden : styles.live}>
        <video
          ref={video}
          className={styles.video}
          autoPlay
          muted
          playsInline
          aria-label={t('camera:live')}
        />
      </div>
      <AlertLine sentence={state.kind === 'fault' ? t(`camera:fault.${state.fault}`) : undefined} />
      <div className={styles.controls}>
        {camera.cameras.length < 2 || camera.chosen === undefined ? null : (
          <SelectInput
            label={t('camera:choose')}
            value={camera.chosen}
            options={camera.cameras.map(({ deviceId, label }, index) => ({
              value: deviceId,
              label: label === '' ? t('camera:unnamed', { number: index + 1 }) : label,
            }))}
            onChange={camera.choose}
          />
        )}
        {camera.light === undefined ? null : (
          <CheckBox isSelected={camera.light.isOn} onChange={camera.light.turn}>
            {t('camera:light')}
          </CheckBox>
        )}
        {state.kind === 'fault' ? (
          <Button look="primary" onPress={camera.retry}>
            {t('camera:again')}
          </Button>
        ) : null}
        {children}
      </div>
    </>
  );
};
