/** Counts a place: its label, then everything that lies there, then Confirm. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { CheckBox } from '../../components/check-box.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import { useCountDraft } from './count-draft.ts';
import styles from './desk.module.css';

export const CountScreen = ({ place }: { readonly place?: string | undefined }) => {
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'place') return false;
    navigate({ screen: 'count', place: meaning.code });
    return true;
  });
  return place === undefined ? <Places /> : <Count place={place} />;
};

const Places = () => {
  const { t, dateText } = useText();
  const places = useStationQuery('count.places', {}).data?.places ?? [];
  return (
    <div className={styles.main}>
      <h1 className={styles.display}>{t('desk:countTitle')}</h1>
      <p className={styles.large}>{t('desk:countHint')}</p>
      <ul className={styles.numbers}>
        {places.map(({ place, devices, counted }) => (
          <li key={place} className={styles.box}>
            <Button isWide icon="scan" onPress={() => navigate({ screen: 'count', place })}>
              {t('desk:countPlace', { place })}
            </Button>
            <p>{t('desk:countDevices', { count: devices })}</p>
            <p>
              {counted === undefined
                ? t('desk:countNever')
                : t('desk:countLast', { date: dateText(counted.on), by: counted.by })}
            </p>
          </li>
        ))}
      </ul>
    </div>
  );
};

const Count = ({ place }: { readonly place: string }) => {
  const { t } = useText();
  const [{ scanned, unknown, keepHere }, change] = useCountDraft(place);
  const [isDone, setDone] = useState(false);
  const finish = useStationCommand('count.finish');
  const input = { place, scanned: [...scanned], unknown: [...unknown] };
  const preview = useStationQuery('count.preview', input, { keepPrevious: true, enabled: !isDone });
  const end = async (): Promise<void> => {
    const ended = await finish.run({ ...input, keepHere: [...keepHere] });
    if (!ended.ok) return;
    change();
    setDone(true);
  };
  useScanHandler(({ meaning, text }) => {
    if (isDone) return false;
    switch (meaning.meaning) {
      case 'device': {
        const { benchId } = meaning.device;
        change((draft) => ({ ...draft, scanned: withOne(draft.scanned, benchId) }));
        return true;
      }
      case 'unknown':
      case 'bench ID not registered':
      case 'malformed':
        change((draft) => ({ ...draft, unknown: withOne(draft.unknown, text) }));
        return true;
      case 'command':
        if (meaning.command !== 'confirm') return false;
        void end();
        return true;
      default:
        return false;
    }
  });
  if (isDone) return <Done place={place} />;
  const result = preview.data?.result;
  const names = (benchIds: readonly BenchId[]) => benchIds.map(formatBenchId);
  return (
    <div className={styles.main}>
      <h1 className={styles.display}>{t('desk:countPlace', { place })}</h1>
      <p className={styles.large}>{t('desk:countScan')}</p>
      <AlertLine sentence={finish.error?.sentence ?? preview.error?.sentence} />
      {result !== undefined && (
        <div className={styles.numbers}>
          <Group title={t('desk:countFound', { count: result.found.length })} lines={names(result.found)} />
          <Group
            title={t('desk:countMissing', { count: result.missing.length })}
            lines={names(result.missing)}
          />
          <section className={styles.box}>
            <h2>{t('desk:countWrong', { count: result.wrongPlace.length })}</h2>
            <ul>
              {result.wrongPlace.map((wrong) => (
                <li key={wrong.benchId}>
                  {formatBenchId(wrong.benchId)}: {t('desk:countBelongs', { place: wrong.place })}
                  <CheckBox
                    isSelected={keepHere.includes(wrong.benchId)}
                    onChange={(isKept) =>
                      change((draft) => ({
                        ...draft,
                        keepHere: isKept
                          ? withOne(draft.keepHere, wrong.benchId)
                          : draft.keepHere.filter((other) => other !== wrong.benchId),
                      }))
                    }
                  >
                    {t('desk:countKeep')}
                  </CheckBox>
                </li>
              ))}
            </ul>
          </section>
          <section className={styles.box}>
            <h2>{t('desk:countOut', { count: result.recordedOut.length })}</h2>
            <ul className={styles.ready}>
              {result.recordedOut.map((benchId) => (
                <li key={benchId} className={styles.row}>
                  {formatBenchId(benchId)}
                  <Button icon="forward" onPress={() => navigate({ screen: 'desk', benchId })}>
                    {t('desk:countCheckIn')}
                  </Button>
                </li>
              ))}
            </ul>
          </section>
          <Group title={t('desk:countUnknown', { count: result.unknown.length })} lines={result.unknown} />
        </div>
      )}
      <div className={styles.row}>
        <Button
          onPress={() => {
            change();
            navigate({ screen: 'count' });
          }}
        >
          {t('desk:back')}
        </Button>
        <Button
          look="primary"
          size="large"
          icon="check"
          isRunning={finish.isRunning}
          onPress={() => void end()}
        >
          {t('desk:countFinish')}
        </Button>
      </div>
    </div>
  );
};

const withOne = <Item,>(items: readonly Item[], item: Item): readonly Item[] =>
  items.includes(item) ? items : [...items, item];

const Group = ({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) => (
  <section className={styles.box}>
    <h2>{title}</h2>
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  </section>
);

const Done = ({ place }: { readonly place: string }) => {
  const { t } = useText();
  return (
    <div className={styles.done} role="status">
      <h1 className={styles.display}>{t('desk:countDone', { place })}</h1>
      <div className={styles.row}>
        <Button look="primary" size="large" autoFocus onPress={() => navigate({ screen: 'count' })}>
          {t('desk:next')}
        </Button>
        <Button onPress={() => navigate({ screen: 'desk' })}>{t('desk:desk')}</Button>
      </div>
    </div>
  );
};
