/** Asks whether what was restored from a worn tag stands on the device. Only a yes opens it. */
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../src/domain/brand.ts';
import { AlertLine } from '../components/alert-line.tsx';
import { Dialog } from '../components/dialog.tsx';
import { NumberedChoices } from '../components/numbered-choices.tsx';
import { StandingMark } from '../components/standing-mark.tsx';
import { useText } from '../i18n/text.ts';
import { navigate } from '../navigation/route.ts';
import { useScanHandler } from '../scan/scan.ts';
import { useStationQuery } from '../station/hooks.ts';
import styles from './camera.module.css';
import type { Evidence } from './reader-messages.ts';
import { useObjectUrl } from './use-object-url.ts';

export interface WornTagDialogProps {
  readonly benchId: BenchId;
  readonly evidence: readonly Evidence[];
  readonly still: Blob | undefined;
  onYes(): void;
  /** Goes back to where it was read. */
  onAgain(): void;
  onClose(): void;
}

export const WornTagDialog = ({ benchId, evidence, still, onYes, onAgain, onClose }: WornTagDialogProps) => {
  const { t, lengthText } = useText();
  const address = useObjectUrl(still);
  const { data, error } = useStationQuery('scan.interpret', { text: benchId, source: 'worn tag' });
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') onClose();
    return false;
  }, 'witness');

  const shown = formatBenchId(benchId);
  const device = data?.meaning === 'suggestion' ? data.devices[0]?.device : undefined;
  const isUnregistered = data?.meaning === 'bench ID not registered';
  const again = {
    key: 'again',
    label: t(device === undefined ? 'camera:worn.again' : 'camera:worn.no'),
    onChoose: onAgain,
  };
  const who = {
    key: 'who',
    label: t('camera:help.who'),
    onChoose: () => {
      onClose();
      navigate({ screen: 'who' });
    },
  };
  const cancel = { key: 'cancel', label: t('camera:worn.cancel'), onChoose: onClose };
  return (
    <Dialog
      title={t(isUnregistered ? 'camera:worn.unregisteredTitle' : 'camera:worn.title')}
      onClose={onClose}
    >
      <p>{isUnregistered ? t('camera:worn.unregistered', { benchId: shown }) : t('camera:worn.text')}</p>
      <div className={styles.compared}>
        {address === undefined ? null : (
          <img className={styles.still} src={address} alt={t('camera:worn.still')} />
        )}
        <div className={styles.facts}>
          <p className={styles.benchId}>{shown}</p>
          {device === undefined ? null : (
            <>
              <p className={styles.fact}>
                {device.manufacturer} {device.model}
              </p>
              <p className={styles.fact}>
                {t('screens:device.serial')}: {device.serial || t('screens:device.unreadable')}
              </p>
              <p className={styles.fact}>
                {t('screens:device.length')}: {lengthText(device.ratedLengthM)}
              </p>
              <StandingMark standing={device.standing} />
            </>
          )}
          <h2>{t('camera:worn.evidence')}</h2>
          <ul className={styles.helps}>
            {[...new Set(evidence.map((each) => wordsOf(each, t)))].map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </div>
      </div>
      <AlertLine sentence={error?.sentence} />
      {data === undefined && error === undefined ? <p role="status">{t('camera:worn.checking')}</p> : null}
      {device === undefined ? (
        <NumberedChoices choices={[again, ...(isUnregistered ? [who] : []), cancel]} />
      ) : (
        <NumberedChoices
          choices={[{ key: 'yes', label: t('camera:worn.yes'), onChoose: onYes }, again, cancel]}
        />
      )}
    </Dialog>
  );
};

const wordsOf = (evidence: Evidence, t: ReturnType<typeof useText>['t']): string => {
  if (evidence.kind === 'decoded') return t('camera:worn.decoded', { symbol: evidence.source });
  const { source, characters } = evidence;
  return t(source === 'Code 128' ? 'camera:worn.bars' : 'camera:worn.printed', { characters });
};
