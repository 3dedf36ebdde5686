/** The camera of the window and every picture that is given to it: what is read in them, and what is then done with that. */
import { type ReactNode, useMemo, useRef, useState } from 'react';
import type { BenchId } from '../../src/domain/brand.ts';
import type { PictureSubject } from '../../src/domain/picture.ts';
import { useText } from '../i18n/text.ts';
import { navigate } from '../navigation/route.ts';
import { useScanBoard, useScanHandler } from '../scan/scan.ts';
import styles from './camera.module.css';
import { type CameraDesk, CameraDeskContext, type PictureCheck } from './camera-desk.ts';
import { CameraPanel } from './camera-panel.tsx';
import { KeepFindingPictureDialog } from './keep-finding-picture-dialog.tsx';
import { KeepPictureDialog } from './keep-picture-dialog.tsx';
import { type FileFault, faultOf, mostMegabytes } from './picture-file.ts';
import type { Evidence } from './reader-messages.ts';
import { RefusedPictureDialog } from './refused-picture-dialog.tsx';
import type { SettledReading } from './settle-readings.ts';
import { StillDialog } from './still-dialog.tsx';
import { usePictureIntake } from './use-picture-intake.ts';
import { WornTagDialog } from './worn-tag-dialog.tsx';

type Task =
  | { readonly kind: 'camera' }
  | { readonly kind: 'file'; readonly file: File }
  | { readonly kind: 'refused'; readonly sentence: string }
  | {
      readonly kind: 'keep';
      readonly benchId: BenchId;
      readonly of: PictureSubject;
      readonly picture?: Blob | undefined;
    }
  | {
      readonly kind: 'keep finding';
      readonly check: PictureCheck;
      readonly picture?: Blob | undefined;
    }
  | {
      readonly kind: 'worn tag';
      readonly benchId: BenchId;
      readonly evidence: readonly Evidence[];
      readonly still: Blob | undefined;
    };

/** A picture in which a text was read; its device is known once the station has said what the text means. */
interface Still {
  readonly text: string;
  readonly picture: Blob;
  readonly benchId?: BenchId;
}

export const CameraProvider = ({ children }: { readonly children: ReactNode }) => {
  const { t } = useText();
  const board = useScanBoard();
  const [task, setTask] = useState<Task>();
  const [still, setStill] = useState<Still>();
  const aim = useRef<PictureCheck>(undefined);
  const close = (): void => setTask(undefined);

  const take = async (file: File): Promise<void> => {
    const fault = await faultOf(file);
    if (fault !== undefined) refuse(file, fault);
    else setTask(taskOf(file));
  };
  const taskOf = (file: File): Task => {
    if (task?.kind === 'keep' || task?.kind === 'keep finding') return { ...task, picture: file };
    return task === undefined && aim.current !== undefined
      ? { kind: 'keep finding', check: aim.current, picture: file }
      : { kind: 'file', file };
  };
  const refuse = (file: File, fault: FileFault): void => {
    const name = file.name === '' ? t('camera:file.pasted') : file.name;
    setTask({ kind: 'refused', sentence: t(`camera:file.${fault}`, { name, most: mostMegabytes }) });
  };
  const isDraggedOver = usePictureIntake((files) => {
    const [file] = files;
    if (file === undefined || files.length > 1)
      setTask({ kind: 'refused', sentence: t('camera:file.several') });
    else void take(file);
  });

  const onSettled = (reading: SettledReading, picture: Blob | undefined): void => {
    if (reading.kind === 'worn tag') {
      const { benchId, evidence } = reading;
      setTask({ kind: 'worn tag', benchId, evidence, still: picture });
      return;
    }
    close();
    setStill(picture === undefined ? undefined : { text: reading.text, picture });
    board.submit(reading.text, false);
  };

  useScanHandler(({ meaning, text }) => {
    setStill((before) =>
      before?.text === text && meaning.meaning === 'device'
        ? { ...before, benchId: meaning.device.benchId }
        : undefined,
    );
    return false;
  }, 'witness');

  const desk = useMemo<CameraDesk>(
    () => ({
      open: () => setTask({ kind: 'camera' }),
      keepPictureOf: (benchId, of, picture) => setTask({ kind: 'keep', benchId, of, picture }),
      keepPictureOfCheck: (check) => setTask({ kind: 'keep finding', check }),
      aimAt: (check) => {
        aim.current = check;
      },
      freshStillOf: (benchId) => (still?.benchId === benchId ? still.picture : undefined),
      dismissStill: () => setStill(undefined),
    }),
    [still],
  );

  const dialogOf = (current: Task): ReactNode => {
    switch (current.kind) {
      case 'camera':
        return <CameraPanel onSettled={onSettled} onFile={(file) => void take(file)} onClose={close} />;
      case 'file':
        return (
          <StillDialog
            key={`${current.file.name} ${current.file.lastModified} ${current.file.size}`}
            file={current.file}
            onSettled={onSettled}
            onNoPicture={() => refuse(current.file, 'no picture')}
            onFile={(file) => void take(file)}
            onClose={close}
          />
        );
      case 'refused':
        return (
          <RefusedPictureDialog
            sentence={current.sentence}
            onFile={(file) => void take(file)}
            onClose={close}
          />
        );
      case 'keep':
        return (
          <KeepPictureDialog
            benchId={current.benchId}
            first={current.of}
            picture={current.picture}
            onPicture={(picture) => setTask({ ...current, picture })}
            onFile={(file) => void take(file)}
            onKept={() => {
              close();
              setStill((before) => (before?.picture === current.picture ? undefined : before));
            }}
            onClose={close}
          />
        );
      case 'keep finding':
        return (
          <KeepFindingPictureDialog
            check={current.check}
            picture={current.picture}
            onPicture={(picture) => setTask({ ...current, picture })}
            onFile={(file) => void take(file)}
            onKept={close}
            onClose={close}
          />
        );
      case 'worn tag': {
        const { benchId, evidence, still: picture } = current;
        return (
          <WornTagDialog
            benchId={benchId}
            evidence={evidence}
            still={picture}
            onYes={() => {
              close();
              setStill(picture === undefined ? undefined : { text: benchId, picture, benchId });
              navigate({ screen: 'device', benchId });
            }}
            onAgain={() => setTask({ kind: 'camera' })}
            onClose={close}
          />
        );
      }
    }
  };

  return (
    <CameraDeskContext value={desk}>
      {children}
      {task === undefined ? null : dialogOf(task)}
      {isDraggedOver ? <div className={styles.drop}>{t('camera:drop')}</div> : null}
    </CameraDeskContext>
  );
};
