/** What the plan of returns is made of: what is missing, each gap with the way to fill it, and what was entered. */
import { useState } from 'react';
import type { OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { BasisDialog, type BasisEntry } from './basis-dialog.tsx';
import { BasisTables } from './basis-tables.tsx';
import { makePlan } from './plan-job.ts';
import { Apart } from './plan-overview.tsx';
import styles from './returns-plan.module.css';

export type Basis = OutputOf<'returns-basis.show'>;
type Missing = Basis['missing'][number];

/** `fault`: why the latest plan was not made. *Confirm* makes the plan. */
export const PlanData = ({ fault }: { readonly fault?: string | undefined }) => {
  const { t } = useText();
  const { data, error } = useStationQuery('returns-basis.show', {}, { keepPrevious: true });
  const [entry, setEntry] = useState<BasisEntry>();
  const make = (): void => {
    void makePlan();
    navigate({ screen: 'returns-plan' });
  };
  useScanHandler(({ meaning }) => {
    if (entry !== undefined || meaning.meaning !== 'command' || meaning.command !== 'confirm') return false;
    make();
    return true;
  });
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('plan:title.plan')}</h1>
        <div className={styles.buttons}>
          <Button icon="away" onPress={() => navigate({ screen: 'returns' })}>
            {t('held:returns.title')}
          </Button>
        </div>
      </div>
      <p className={styles.text}>{t('plan:text')}</p>
      <AlertLine sentence={fault} />
      <div className={styles.buttons}>
        <Button look="primary" size="large" icon="forward" onPress={make}>
          {t('plan:make', { count: data.devices })}
        </Button>
      </div>
      {data.missing.length === 0 ? null : (
        <section className={styles.panel} aria-labelledby="missing">
          <h2 id="missing">{t('plan:missing')}</h2>
          <ul className={styles.list}>
            {data.missing.map((each) => (
              <li key={each.sentence} className={styles.line}>
                <span>{each.sentence}</span>
                <EnterButton missing={each} onEnter={setEntry} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <BasisTables basis={data} onEnter={setEntry} />
      {data.apart.length === 0 ? null : <Apart apart={data.apart} />}
      {entry === undefined ? null : (
        <BasisDialog entry={entry} basis={data} onClose={() => setEntry(undefined)} />
      )}
    </div>
  );
};

interface EnterButtonProps {
  readonly missing: Missing;
  onEnter(entry: BasisEntry): void;
}

/** Leads to the place where the gap is filled. */
const EnterButton = ({ missing, onEnter }: EnterButtonProps) => {
  const { t, lengthText } = useText();
  const { kind, model, manufacturer, lengthM } = missing;
  if (kind === 'service life')
    return (
      <Button
        label={t('plan:modelSheetOf', { name: model?.name ?? '' })}
        onPress={() => navigate({ screen: 'setup', panel: 'models' })}
      >
        {t('plan:modelSheet')}
      </Button>
    );
  const entry = entryOf(missing);
  const of =
    model?.name ?? manufacturer ?? (lengthM === undefined ? t('plan:currency') : lengthText(lengthM));
  return entry === undefined ? null : (
    <Button label={t('plan:enterOf', { name: of })} onPress={() => onEnter(entry)}>
      {t('plan:enter')}
    </Button>
  );
};

const entryOf = ({ kind, model, manufacturer, lengthM }: Missing): BasisEntry | undefined => {
  switch (kind) {
    case 'currency':
      return { what: 'plan' };
    case 'maker':
    case 'observed turnaround':
      return manufacturer === undefined ? undefined : { what: 'maker', manufacturer };
    case 'need':
    case 'new device':
    case 'new life':
      return lengthM === undefined ? undefined : { what: 'length', lengthM };
    case 'repair terms':
    case 'repair price':
    case 'quote ended':
    case 'turnaround':
    case 'price not fixed':
      return model === undefined ? undefined : { what: 'model', ...model };
    case 'service life':
      return undefined;
  }
};
