/** The register: every device of the station, searched as one types, filtered by standing and due date. */
import { useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Choice } from '../../components/choice.tsx';
import { StationError } from '../../components/station-error.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate, type RegisterFilter, registerFilters } from '../../navigation/route.ts';
import { useChoiceOfDevices } from './choice-of-devices.ts';
import { DeviceTable } from './device-table.tsx';
import styles from './register.module.css';
import { useDevicePages } from './use-device-pages.ts';
import { UseOfSeveral } from './use-of-several.tsx';
import { useSettled } from './use-settled.ts';

export const RegisterScreen = ({ filter }: { readonly filter?: RegisterFilter | undefined }) => {
  const { t } = useText();
  const [search, setSearch] = useState('');
  const [firstRow, setFirstRow] = useState(0);
  const settled = useSettled(search.trim(), 120);
  const pages = useDevicePages(settled, filter, firstRow);
  const choice = useChoiceOfDevices();

  if (pages.error?.code === 'sign-in-needed' || pages.error?.code === 'role-needed')
    return <StationError error={pages.error} />;
  return (
    <div className={styles.screen}>
      <div className={styles.bar}>
        <h1>{t('screens:register.title')}</h1>
        <div className={styles.search}>
          <TextInput
            label={t('screens:register.search')}
            isLabelHidden
            type="search"
            placeholder={t('screens:register.searchPlaceholder')}
            value={search}
            onChange={setSearch}
          />
        </div>
        <p className={styles.total} aria-live="polite">
          {pages.total === undefined
            ? t('screens:app.loading')
            : t('screens:register.found', { count: pages.total })}
        </p>
        <Button icon="blank" onPress={() => navigate({ screen: 'who' })}>
          {t('screens:register.who')}
        </Button>
        {filter === 'held' ? (
          <Button icon="tag" onPress={() => navigate({ screen: 'markings' })}>
            {t('screens:register.markings')}
          </Button>
        ) : (
          <Button icon="plus" onPress={() => navigate({ screen: 'new-device' })}>
            {t('screens:register.add')}
          </Button>
        )}
      </div>
      <Choice<RegisterFilter | 'all'>
        label={t('screens:register.show')}
        isLabelHidden
        isCompact
        value={filter ?? 'all'}
        options={(['all', ...registerFilters] as const).map((value) => ({
          value,
          label: t(`screens:register.filter.${value}`),
        }))}
        onChange={(chosen) => navigate({ screen: 'register', filter: chosen === 'all' ? undefined : chosen })}
      />
      <UseOfSeveral choice={choice} total={pages.total ?? 0} allShown={pages.all} />
      <AlertLine sentence={pages.error?.sentence} />
      {pages.total === 0 ? (
        <p>{t('screens:register.none')}</p>
      ) : (
        <DeviceTable
          key={`${filter}/${settled}`}
          total={pages.total ?? 0}
          deviceAt={pages.deviceAt}
          onFirstRow={setFirstRow}
          choice={choice}
        />
      )}
    </div>
  );
};
