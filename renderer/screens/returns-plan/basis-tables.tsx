/** What was entered for the plan of returns: by manufacturer, by length, and for the whole. */
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import type { BasisEntry } from './basis-dialog.tsx';
import type { Basis } from './plan-data.tsx';
import styles from './returns-plan.module.css';
import { usePlanWords } from './use-plan-words.ts';

export interface BasisTablesProps {
  readonly basis: Basis;
  onEnter(entry: BasisEntry): void;
}

export const BasisTables = ({ basis, onEnter }: BasisTablesProps) => {
  const { t } = useText();
  return (
    <>
      <section className={styles.panel} aria-labelledby="whole">
        <h2 id="whole">{t('plan:whole')}</h2>
        <div className={styles.line}>
          <span>
            {t('plan:months', { count: basis.months })}{' '}
            {basis.currency === undefined
              ? t('plan:noCurrency')
              : t('plan:inCurrency', { currency: basis.currency })}
          </span>
          <ChangeButton name={t('plan:whole')} onPress={() => onEnter({ what: 'plan' })} />
        </div>
      </section>
      {basis.makers.length === 0 ? null : <Makers basis={basis} onEnter={onEnter} />}
      {basis.lengths.length === 0 ? null : <Lengths basis={basis} onEnter={onEnter} />}
    </>
  );
};

const Makers = ({ basis, onEnter }: BasisTablesProps) => {
  const { t } = useText();
  const { money } = usePlanWords(basis.currency ?? '');
  return (
    <section className={styles.panel} aria-labelledby="makers">
      <h2 id="makers">{t('plan:makers')}</h2>
      <table className={styles.table} aria-labelledby="makers">
        <thead>
          <tr>
            {(['maker', 'planned', 'shipment', 'breaks', 'change'] as const).map((column) => (
              <th key={column} scope="col">
                {t(`plan:column.${column}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {basis.makers.map(({ manufacturer, devices, terms }) => (
            <tr key={manufacturer}>
              <th scope="row">{manufacturer}</th>
              <td>{devices}</td>
              <td>{terms === undefined ? t('plan:notEntered') : money(terms.shipmentCost)}</td>
              <td>
                {(terms?.priceBreaks ?? [])
                  .map(({ from, percentOff }) => t('plan:break', { from, percentOff }))
                  .join('; ')}
              </td>
              <td>
                <ChangeButton name={manufacturer} onPress={() => onEnter({ what: 'maker', manufacturer })} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};

const Lengths = ({ basis, onEnter }: BasisTablesProps) => {
  const { t, lengthText } = useText();
  const { money } = usePlanWords(basis.currency ?? '');
  const neededText = (needed: readonly number[] | undefined): string => {
    if (needed === undefined) return t('plan:notEntered');
    const [least, most] = [Math.min(...needed), Math.max(...needed)];
    return least === most ? String(least) : t('plan:between', { least, most });
  };
  return (
    <section className={styles.panel} aria-labelledby="lengths">
      <h2 id="lengths">{t('plan:lengths')}</h2>
      <table className={styles.table} aria-labelledby="lengths">
        <thead>
          <tr>
            {(['length', 'planned', 'inService', 'needed', 'new', 'change'] as const).map((column) => (
              <th key={column} scope="col">
                {t(`plan:column.${column}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {basis.lengths.map(({ lengthM, devices, inService, plan }) => (
            <tr key={lengthM}>
              <th scope="row">{lengthText(lengthM)}</th>
              <td>{devices}</td>
              <td>{inService}</td>
              <td>{neededText(plan?.needed)}</td>
              <td>
                {plan?.newDevice === undefined
                  ? t('plan:notEntered')
                  : t('plan:newDevice', {
                      price: money(plan.newDevice.price),
                      count: plan.newDevice.leadTimeDays,
                    })}
              </td>
              <td>
                <ChangeButton
                  name={lengthText(lengthM)}
                  onPress={() => onEnter({ what: 'length', lengthM })}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};

const ChangeButton = ({ name, onPress }: { readonly name: string; onPress(): void }) => {
  const { t } = useText();
  return (
    <Button label={t('plan:changeOf', { name })} onPress={onPress}>
      {t('plan:change')}
    </Button>
  );
};
