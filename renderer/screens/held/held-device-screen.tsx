/** One held device: the next step largest, then why it is held, what is missing, the evidence, and its fall case. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { NextStep } from '../../../src/domain/held/next-step.ts';
import type { HeldView } from '../../../src/station/held-view.ts';
import { Button, type ButtonProps } from '../../components/button.tsx';
import { StandingMark } from '../../components/standing-mark.tsx';
import { StationError } from '../../components/station-error.tsx';
import { type TextKey, useText } from '../../i18n/text.ts';
import { hashOf, navigate, type Route } from '../../navigation/route.ts';
import { useNumberedActs } from '../../scan/use-numbered-acts.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { EvidenceList } from './evidence-list.tsx';
import { FallCasePanel } from './fall-case-panel.tsx';
import styles from './held.module.css';
import { type HeldAct, HeldDialog } from './held-dialog.tsx';
import { PlaceByScan } from './place-by-scan.tsx';
import { ReasonPanel } from './reason-panel.tsx';
import { useHeldScan } from './use-held-scan.ts';

export const HeldDeviceScreen = ({ benchId }: { readonly benchId: BenchId }) => {
  const { t } = useText();
  const { data, error } = useStationQuery('held.show', { benchId });
  useHeldScan();
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  return <HeldDevice held={data.held} />;
};

const HeldDevice = ({ held }: { readonly held: HeldView }) => {
  const { t, dateText, inLanguage } = useText();
  const [act, setAct] = useState<HeldAct>();
  const { device, since, place, quarantinePlace, scrapped, nextStep } = held;
  const { benchId } = device;
  const isHeld = device.standing === 'quarantined' || device.standing === 'at manufacturer';
  const next = nextStep === 'nothing' || !isHeld ? undefined : nextStep;
  const go = (): void => {
    if (next === undefined) return;
    const away = placeOf(next, held);
    if (away === undefined) setAct(next);
    else navigate(away);
  };
  const others = otherSteps(held).filter((step) => step !== next);
  const isFree = act === undefined;
  useNumberedActs(isFree ? others.map((step) => () => setAct(step)) : [], {
    confirm: isFree && next !== undefined ? go : undefined,
    back: isFree ? toList : undefined,
  });
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>
          {formatBenchId(benchId)} {device.manufacturer} {device.model}
        </h1>
        <StandingMark standing={device.standing} isLarge />
      </div>
      {since === undefined || !isHeld ? null : (
        <p>
          {t('held:since', {
            date: dateText(since),
            days: t('held:days', { count: held.days }),
            place:
              device.standing === 'at manufacturer'
                ? t('screens:standing.at manufacturer')
                : (place ?? inLanguage(quarantinePlace)),
          })}
        </p>
      )}
      {scrapped === undefined ? null : (
        <p className={styles.reason}>
          {t('held:scrappedBy', {
            date: dateText(scrapped.on),
            name: scrapped.by,
            witness: scrapped.witness,
          })}
        </p>
      )}
      {isHeld || scrapped !== undefined ? null : <p>{t('held:notHeld')}</p>}
      {device.standing === 'quarantined' ? <PlaceByScan benchId={benchId} isListening={isFree} /> : null}
      {next === undefined ? null : (
        <section className={styles.next} aria-labelledby="next-step">
          <h2 id="next-step">{t('held:nextTitle')}</h2>
          <p className={styles.step}>{t(`held:step.${next}`)}</p>
          <p>{t('held:nextOwner', { owner: t(`held:owner.${held.owner}`) })}</p>
          <div className={styles.buttons}>
            <Button look="primary" size="large" icon="forward" onPress={go} autoFocus>
              {t(`held:do.${next}`)}
            </Button>
          </div>
        </section>
      )}
      <div className={styles.columns}>
        {held.reasons.length === 0 ? null : <ReasonPanel held={held} />}
        <div className={styles.screen}>
          <EvidenceList held={held} />
          {held.fallCase === undefined ? null : <FallCasePanel file={held.fallCase} />}
          {held.closedReasons.length === 0 ? null : <ClosedReasons held={held} />}
        </div>
      </div>
      <div className={styles.buttons}>
        {others.map((step, index) => (
          <Button key={step} number={index + 1} onPress={() => setAct(step)} {...looks[step]}>
            {t(words[step])}
          </Button>
        ))}
        <a className={styles.away} href={hashOf({ screen: 'device', benchId })}>
          {t('held:card')}
        </a>
        <a className={styles.away} href={hashOf({ screen: 'held' })}>
          {t('held:back')}
        </a>
      </div>
      {act === undefined ? null : <HeldDialog act={act} held={held} onClose={() => setAct(undefined)} />}
    </div>
  );
};

type OtherStep = 'get evidence' | 'add to batch' | 'scrap' | 'note fall case';

/** What can be done besides the next step, in the order of its digits. */
const otherSteps = ({ device, returnBatch, fallCase }: HeldView): readonly OtherStep[] => {
  const isHeld = device.standing === 'quarantined' || device.standing === 'at manufacturer';
  if (!isHeld) return [];
  const isHere = returnBatch === undefined && device.standing !== 'at manufacturer';
  return [
    'get evidence',
    ...(isHere ? (['add to batch'] as const) : []),
    'scrap',
    ...(fallCase !== undefined && fallCase.phase === 'open' ? (['note fall case'] as const) : []),
  ];
};

const words = {
  'get evidence': 'held:do.get evidence',
  'add to batch': 'held:toBatch',
  scrap: 'held:do.scrap',
  'note fall case': 'held:fall.note',
} as const satisfies Record<OtherStep, TextKey>;

const looks: Record<OtherStep, Pick<ButtonProps, 'icon' | 'look'>> = {
  'get evidence': {},
  'add to batch': { icon: 'away' },
  scrap: { icon: 'cross', look: 'remove' },
  'note fall case': {},
};

const toList = (): void => navigate({ screen: 'held' });

/** Where a step is done, or `undefined` where it is done in a dialog here. */
const placeOf = (step: NextStep, { device: { benchId }, returnBatch }: HeldView): Route | undefined => {
  switch (step) {
    case 'check in':
      return { screen: 'desk', benchId };
    case 'hang tag':
      return { screen: 'tag', benchId, kind: 'quarantine' };
    case 'read marking':
      return { screen: 'relabel', benchId };
    case 'inspect':
      return { screen: 'device', benchId };
    case 'ship batch':
    case 'wait for manufacturer':
    case 'ask manufacturer':
      return { screen: 'returns', batch: returnBatch };
    default:
      return undefined;
  }
};

const ClosedReasons = ({ held }: { readonly held: HeldView }) => {
  const { t, dateText, inLanguage } = useText();
  return (
    <section className={styles.panel} aria-labelledby="closed-reasons">
      <h2 id="closed-reasons">{t('held:closed')}</h2>
      <ul className={styles.list}>
        {held.closedReasons.map(({ key, sentence, closedOn, inspection }) => (
          <li key={`${key} ${inspection} ${sentence.en}`} className={styles.item}>
            {t('held:closedLine', {
              reason: inLanguage(sentence),
              date: dateText(closedOn),
              inspection,
            })}
          </li>
        ))}
      </ul>
    </section>
  );
};
