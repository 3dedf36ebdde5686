/** What can be seen on a device that cannot be read: a numbered menu of facts, one of them entered at a time. */
import { useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import {
  emptyFacts,
  type FactField,
  isEmpty,
  type MenuField,
  menuFields,
  observationOf,
} from './fact-draft.ts';
import { FactEntry } from './fact-entry.tsx';
import { OtherFacts } from './other-facts.tsx';
import { useFactWords } from './use-fact-words.ts';
import styles from './who.module.css';

export const WhoScreen = () => {
  const { t, lengthUnit } = useText();
  const words = useFactWords();
  const [draft, setDraft] = useState(emptyFacts);
  const [entering, setEntering] = useState<MenuField | 'other'>();
  const sheets = useStationQuery('model-sheet.list', {});
  const people = useStationQuery('person.list', {});
  const open = useStationCommand('identity.open');
  const isMenu = entering === undefined;
  const canSearch = !isEmpty(draft) && !open.isRunning;

  const search = async (): Promise<void> => {
    if (!canSearch) return;
    const result = await open.run({ observation: observationOf(draft, lengthUnit) });
    if (result.ok) navigate({ screen: 'who', identityCase: result.output.identityCase });
  };
  useScanHandler(({ meaning }) => {
    if (!isMenu || meaning.meaning !== 'command') return false;
    const field = menuFields[Number(meaning.command) - 1];
    if (field !== undefined) setEntering(field);
    else if (meaning.command === '9') setEntering('other');
    else if (meaning.command === 'confirm' || meaning.command === 'next') void search();
    else return false;
    return true;
  });

  if (sheets.error !== undefined) return <StationError error={sheets.error} />;

  const set = (field: FactField, value: string): void =>
    setDraft((before) => ({ ...before, [field]: value }));
  const lastUser = people.data?.people.find(({ personId }) => personId === draft.lastUserId)?.name;
  const observation = observationOf(draft, lengthUnit);
  const textOf = (field: FactField): string => words.seen(observation, field, lastUser);
  const rows = [
    ...menuFields.map((field) => ({
      key: field,
      name: t(`screens:identity.field.${field}`),
      value: textOf(field),
      open: () => setEntering(field),
    })),
    {
      key: 'other',
      name: t('screens:identity.other'),
      value: (['benchId', 'tagNumber', 'lastUserId', 'found'] as const)
        .map(textOf)
        .filter((value) => value !== '')
        .join(', '),
      open: () => setEntering('other' as const),
    },
  ];
  if (entering === 'other') {
    return (
      <OtherFacts
        draft={draft}
        people={people.data?.people ?? []}
        onChange={set}
        onDone={() => setEntering(undefined)}
      />
    );
  }
  if (entering !== undefined) {
    return (
      <FactEntry
        key={entering}
        field={entering}
        draft={draft}
        sheets={sheets.data?.modelSheets ?? []}
        onKeep={(value) => {
          set(entering, value);
          setEntering(undefined);
        }}
        onBack={() => setEntering(undefined)}
      />
    );
  }
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('screens:identity.title')}</h1>
        <p>{t('screens:identity.hint')}</p>
      </div>
      <AlertLine sentence={open.error?.sentence} />
      <ul className={styles.menu}>
        {rows.map(({ key, name, value, open: press }, index) => (
          <li key={key}>
            <Button number={index + 1} isWide onPress={press}>
              <span className={styles.fact}>
                <span>{name}</span>
                <span className={value === '' ? styles.unseen : styles.value}>
                  {value === '' ? t('screens:identity.notSeen') : value}
                </span>
              </span>
            </Button>
          </li>
        ))}
      </ul>
      <div className={styles.actions}>
        <p className={styles.soft}>{t('screens:identity.keepOut')}</p>
        <Button
          look="primary"
          size="large"
          icon="forward"
          isDisabled={!canSearch}
          onPress={() => void search()}
        >
          {t('screens:identity.search')}
        </Button>
      </div>
    </div>
  );
};
